import { everyEdition } from "../basis/edition.js";
import type { Check } from "./finding.js";
import { needsPerson } from "./outcome.js";

export const subpanelNeutral: Check = {
  id: "subpanel-neutral",
  title: "Neutral and equipment ground stay apart in a panel on a feeder",
  rule: { sections: everyEdition("250.142(B)"), standing: "published" },
  run: ({ design }) =>
    design.feeders.map(({ feeder }) =>
      needsPerson(
        feeder.panel.name,
        "the bond is made at the service only",
        "bonding screw or strap left out; neutrals on an insulated bar, equipment grounds on a bar fixed to the enclosure; four wires in the feeder",
      ),
    ),
};
