import { everyEdition } from "../basis/edition.js";
import { racewayJoints } from "../raceway-joints.js";
import type { Check } from "./finding.js";
import { foundOnRuns, needsPerson } from "./outcome.js";

export const racewayJoint: Check = {
  id: "raceway-joint",
  title: "Unlike raceways meet in a fitting made for both",
  rule: { sections: everyEdition("300.15(F)"), standing: "memory" },
  run: foundOnRuns(
    (run) =>
      racewayJoints(run).map(({ before, after, says }) =>
        needsPerson(
          `${run.run.name}: ${before.segment.name}, ${after.segment.name}`,
          `${says} with no box between`,
          "a reducer or adapter listed for both, smooth inside and without a splice; or a box, or one trade size throughout",
        ),
      ),
    "no raceways of unlike size or kind meet without a box",
  ),
};
