import type { Edition } from "../basis/edition.js";
import { racewayJoint } from "../checks/raceway-joint.js";
import { racewayJoints } from "../raceway-joints.js";
import { type AnyRun, byRule, type LineWords } from "./line.js";

/** Fittings between unlike raceways, seen with the trench where either lies in it. */
export function jointLines(run: AnyRun, buried: boolean, edition: Edition): readonly LineWords[] {
  return racewayJoints(run)
    .filter(({ before, after }) => [before, after].some(({ segment }) => segment.place === "buried") === buried)
    .map(({ before, after, says }) => ({
      id: "raceway-joint",
      section: byRule(racewayJoint, edition),
      look: `${run.run.name}: ${before.segment.name} to ${after.segment.name}, the fitting between`,
      seen: `${says}: a reducer or adapter listed for both, no splice in it`,
      how: "look at the fitting and its marking",
    }));
}
