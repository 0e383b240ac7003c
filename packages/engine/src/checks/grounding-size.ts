import { everyEdition } from "../basis/edition.js";
import { shortOfCmil } from "../sizing/grounding.js";
import { compareSizes, printSize } from "../tables/size.js";
import type { Check } from "./finding.js";
import { caution, eachSegment, fail, pass } from "./outcome.js";
import { notRead, standsAlready } from "./standing.js";

/** Within this per cent of the circular mils a shortfall is told, not failed: the printed sizes are themselves rounded. */
const NEAR_EDGE = "0.1";

export const groundingSize: Check = {
  id: "grounding-size",
  title: "The equipment grounding conductor is large enough",
  rule: { sections: everyEdition("250.122"), standing: "published" },
  run: eachSegment((s, run, subject, { basis }) => {
    if (s.grounding.chosen === "computed" && standsAlready(run)) return notRead(subject, printSize(s.grounding.size), "conductors.grounding");
    if (compareSizes(s.grounding.size, s.requiredGrounding) >= 0)
      return pass(subject, `${printSize(s.grounding.size)}, least ${printSize(s.requiredGrounding)}`);
    const short = shortOfCmil(s.grounding.size, s.requiredGroundingCmil, basis.edition);
    if (short.lte(NEAR_EDGE))
      return caution(
        subject,
        `${printSize(s.grounding.size)} is short by ${short.toDecimalPlaces(3).toFixed()} % of the circular mils the proportion asks`,
        `ask the authority to accept ${printSize(s.grounding.size)}, or use ${printSize(s.requiredGrounding)}`,
      );
    return fail(
      subject,
      `${printSize(s.grounding.size)} is less than ${printSize(s.requiredGrounding)}${s.requiredSize !== null && compareSizes(s.conductor.size, s.requiredSize) > 0 ? ", raised in proportion with the hots" : ""}`,
      s.grounding.chosen === "cable"
        ? "use wire in raceway with its own equipment grounding conductor, or a cable with a larger one"
        : `use ${printSize(s.requiredGrounding)}`,
    );
  }),
};
