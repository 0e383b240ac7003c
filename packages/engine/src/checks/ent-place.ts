import { everyEdition } from "../basis/edition.js";
import type { Check } from "./finding.js";
import { eachSegment, fail, needsPerson, pass } from "./outcome.js";

export const entPlace: Check = {
  id: "ent-place",
  title: "ENT keeps out of sun, ground and harm",
  rule: { sections: everyEdition("362.12"), standing: "memory" },
  run: eachSegment(({ segment }, _run, subject) => {
    if (segment.method !== "ENT") return null;
    if (segment.place === "buried") return fail(subject, "electrical nonmetallic tubing in the ground", "use PVC Schedule 40 or 80");
    if (segment.exposed_to_damage) return fail(subject, "electrical nonmetallic tubing where it can be struck", "use PVC Schedule 80, RMC, IMC or EMT");
    return segment.place === "outdoors"
      ? needsPerson(subject, "electrical nonmetallic tubing outdoors", "see that the sun never falls on it, or that it is marked sunlight resistant")
      : pass(subject, "indoors, not where it can be struck");
  }),
};
