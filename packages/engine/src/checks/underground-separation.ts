import type { Check } from "./finding.js";
import { eachSegment, needsPerson } from "./outcome.js";

export const undergroundSeparation: Check = {
  id: "underground-separation",
  title: "Buried wiring keeps clear of gas and water lines",
  rule: null,
  run: eachSegment(({ segment }, _run, subject) =>
    segment.place === "buried"
      ? needsPerson(
          subject,
          "other lines in the ground are not known here; how far off they must be is local or utility law",
          "have the lines marked before digging; keep 12 in from gas and water lines unless the utility asks more (common practice, no source)",
        )
      : null,
  ),
};
