import { racewayJoints, UNLIKE_JOINT } from "../raceway-joints.js";
import type { Check } from "./finding.js";
import { foundOnRuns, needsPerson } from "./outcome.js";

export const racewayJoint: Check = {
  id: "raceway-joint",
  title: "Unlike raceways meet in a fitting made for both",
  rule: UNLIKE_JOINT,
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
