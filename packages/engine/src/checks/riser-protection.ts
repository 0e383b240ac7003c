import { everyEdition } from "../basis/edition.js";
import { groundUnder } from "../sizing/riser.js";
import { isCable } from "../tables/cable.js";
import type { Check, Outcome } from "./finding.js";
import { fail, foundOnRuns, needsPerson, pass } from "./outcome.js";

const STRONG = ["RMC", "IMC", "PVC-80"];
const MEND = "use PVC Schedule 80, RMC or IMC from the cover depth to 8 ft above grade";

export const riserProtection: Check = {
  id: "riser-protection",
  title: "A riser exposed to damage is protected",
  rule: { sections: everyEdition("300.5(D)(1), (4)"), standing: "published" },
  run: foundOnRuns(
    (run, { basis }) =>
      run.segments.flatMap(({ segment }, i): Outcome[] => {
        const subject = `${run.run.name}: ${segment.name}`;
        const riser = groundUnder(run, i).length > 0;
        if (!segment.exposed_to_damage && !riser) return [];
        const local = basis.riserMethods;
        if (riser && local !== null && !local.methods.includes(segment.method))
          return [
            fail(subject, `${segment.method} out of the ground is not taken here: ${local.reason} (${local.citation})`, `use ${local.methods.join(", ")}`),
          ];
        if (STRONG.includes(segment.method)) return [pass(subject, `${segment.method} where it can be struck`)];
        if (segment.exposed_to_damage || isCable(segment.method))
          return [fail(subject, `${segment.method} where it comes out of the ground or can be struck`, MEND)];
        return [
          needsPerson(
            subject,
            `${segment.method} comes out of the ground, taken as not exposed to damage`,
            `see that nothing can strike it; if anything can, ${MEND}`,
          ),
        ];
      }),
    "nothing comes out of the ground or can be struck",
  ),
};
