import { everyEdition } from "../basis/edition.js";
import type { Check } from "./finding.js";
import { eachSegment, notApplicable } from "./outcome.js";

export const warningRibbon: Check = {
  id: "warning-ribbon",
  title: "A ribbon marks buried service conductors",
  rule: { sections: everyEdition("300.5(D)(3)"), standing: "memory" },
  run: eachSegment(({ segment }, _run, subject) =>
    segment.place === "buried"
      ? notApplicable(
          subject,
          "asked of service conductors only; a ribbon 12 in above a feeder or branch circuit is cheap all the same (common practice, no source)",
        )
      : null,
  ),
};
