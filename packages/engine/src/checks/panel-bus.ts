import { everyEdition } from "../basis/edition.js";
import type { Check } from "./finding.js";
import { fail, pass } from "./outcome.js";

export const panelBus: Check = {
  id: "panel-bus",
  title: "The panel bus is protected at its rating",
  rule: { sections: everyEdition("408.36"), standing: "published" },
  run: ({ job }) => {
    const { panel, rating } = { panel: job.service.panel, rating: job.service.rating };
    const protectedAt = panel.main ?? rating;
    return protectedAt > panel.bus
      ? [fail(panel.name, `a ${panel.bus} A bus is protected at ${protectedAt} A`, `protect the panel at ${panel.bus} A or replace it`)]
      : [pass(panel.name, `${panel.bus} A bus protected at ${protectedAt} A`)];
  },
};
