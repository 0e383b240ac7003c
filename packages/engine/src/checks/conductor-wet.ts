import { everyEdition } from "../basis/edition.js";
import { isCable } from "../tables/cable.js";
import { ratingOf } from "../tables/insulation-rating.js";
import type { Check } from "./finding.js";
import { eachSegment, fail, pass } from "./outcome.js";

export const conductorWet: Check = {
  id: "conductor-wet",
  title: "Conductors in wet raceways are wet-rated",
  rule: { sections: everyEdition("300.9"), standing: "published" },
  run: eachSegment((s, _run, subject) => {
    if (!s.wet || isCable(s.segment.method)) return null;
    const { insulation } = s.segment.conductors;
    const rating = ratingOf(insulation, true);
    return rating === null
      ? fail(subject, `${insulation} alone is not for wet places`, "use THWN-2 or XHHW-2 (most dual-marked wire is both: read the print on it)")
      : pass(subject, `${insulation} is wet-rated, ${rating} °C`);
  }),
};
