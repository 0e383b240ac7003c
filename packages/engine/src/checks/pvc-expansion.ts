import { everyEdition } from "../basis/edition.js";
import { decimal, print } from "../quantity.js";
import type { Check } from "./finding.js";
import { eachSegment, needsPerson, pass } from "./outcome.js";

/** Expansion of rigid PVC, inch per inch and °F (from memory of Table 352.44), over a yearly span taken as 100 °F (common practice, no source). */
const PER_DEGREE_F = "0.0000338";
const SPAN_F = 100;

export const pvcExpansion: Check = {
  id: "pvc-expansion",
  title: "PVC outdoors has room to expand",
  rule: { sections: everyEdition("352.44"), standing: "memory" },
  run: eachSegment(({ segment }, _run, subject) => {
    if (!segment.method.startsWith("PVC") || segment.place !== "outdoors") return null;
    const inches = decimal(segment.length).times(12).times(PER_DEGREE_F).times(SPAN_F);
    return inches.lt("0.25")
      ? pass(subject, `${print(inches, 3)} in over ${SPAN_F} °F, under 1/4 in`)
      : needsPerson(
          subject,
          `${print(inches, 2)} in of movement over ${SPAN_F} °F, 1/4 in or more between fixed points`,
          "set an expansion fitting, or show that bends or the ground take up the movement",
        );
  }),
};
