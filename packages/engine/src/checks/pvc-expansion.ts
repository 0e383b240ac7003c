import { everyEdition } from "../basis/edition.js";
import { print } from "../quantity.js";
import { USUAL_TRAVEL_IN } from "../sizing/segment-raceway.js";
import type { Check } from "./finding.js";
import { eachSegment, needsPerson, pass } from "./outcome.js";

export const pvcExpansion: Check = {
  id: "pvc-expansion",
  title: "PVC outdoors has room to expand",
  rule: { sections: { ...everyEdition("352.44"), "2023": "352.44(A)", "2026": "352.44(A)" }, standing: "one-source" },
  run: eachSegment(({ segment, expansion }, _run, subject) => {
    if (expansion === null) return null;
    const { change, spanF, needed, fittings, span } = expansion;
    const over = `over ${print(spanF)} °F${span === null ? " (taken: common practice, no source)" : ""}`;
    if (!needed) return pass(subject, `${print(change.value, 3)} in ${over}, under 1/4 in`);
    const travel =
      segment.expansion_travel === undefined ? `${USUAL_TRAVEL_IN} in of travel, a usual figure` : `${print(segment.expansion_travel)} in of travel`;
    return needsPerson(
      subject,
      `${print(change.value, 2)} in of movement ${over}, 1/4 in or more between fixed points`,
      `set ${fittings.value} expansion fitting${fittings.value === "1" ? "" : "s"} (${travel}) by the maker's chart for the day's temperature, or show that bends or the ground take up the movement`,
    );
  }),
};
