import { everyEdition } from "../basis/edition.js";
import { panelsOf } from "../job/tree.js";
import type { Check } from "./finding.js";
import { fail, pass } from "./outcome.js";

export const panelBus: Check = {
  id: "panel-bus",
  title: "The panel bus is protected at its rating",
  rule: { sections: everyEdition("408.36"), standing: "published" },
  run: ({ job, design }) =>
    panelsOf(job).map(({ panel, feeder }) => {
      const ahead = feeder === null ? job.service.rating : Number(design.feeders.find((f) => f.feeder.id === feeder.id)!.rating);
      const protectedAt = Math.min(panel.main ?? ahead, feeder === null ? Number.POSITIVE_INFINITY : ahead);
      return protectedAt > panel.bus
        ? fail(panel.name, `a ${panel.bus} A bus is protected at ${protectedAt} A`, `protect the panel at ${panel.bus} A or replace it`)
        : pass(panel.name, `${panel.bus} A bus protected at ${protectedAt} A`);
    }),
};
