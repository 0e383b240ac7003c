import { everyEdition } from "../basis/edition.js";
import { decimal } from "../quantity.js";
import { readCell } from "../tables/code-table.js";
import { printSize } from "../tables/size.js";
import { SMALL_CONDUCTOR } from "../tables/small-conductor.js";
import type { Check } from "./finding.js";
import { eachSegment, fail, notApplicable, pass } from "./outcome.js";

export const smallConductor: Check = {
  id: "small-conductor",
  title: "Small conductors keep their breaker limit",
  rule: { sections: everyEdition("240.4(D)"), standing: "published" },
  run: eachSegment((s, { rating, protection }, subject, { basis }) => {
    const cell = readCell(SMALL_CONDUCTOR, s.conductor.size, s.segment.conductors.material, basis.edition);
    if (cell === null) return null;
    if (!protection.smallConductorCap) return notApplicable(subject, "240.4(G): its own article protects these conductors, not the small-conductor limit");
    return decimal(rating).gt(cell.value)
      ? fail(subject, `${printSize(s.conductor.size)} behind ${rating} A; its limit is ${cell.value} A`, `use ${printSize(s.requiredSize)}`)
      : pass(subject, `${printSize(s.conductor.size)} behind ${rating} A, limit ${cell.value} A`);
  }),
};
