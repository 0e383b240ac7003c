import { everyEdition } from "../basis/edition.js";
import { compareSizes, printSize } from "../tables/size.js";
import type { Check } from "./finding.js";
import { eachRun, needsPerson, pass } from "./outcome.js";

export const terminalWireRange: Check = {
  id: "terminal-wire-range",
  title: "Breaker and outlet take a wire of this size",
  rule: { sections: everyEdition("110.14(A)"), standing: "memory" },
  run: eachRun(({ run, segments }) => {
    const raised = [segments[0], segments.at(-1)].filter(
      (s) => s !== undefined && s.requiredSize !== null && compareSizes(s.conductor.size, s.requiredSize) > 0,
    );
    const [s] = raised;
    if (s === undefined) return pass(run.name, "no larger at the terminals than the circuit needs");
    return needsPerson(
      run.name,
      `${printSize(s.conductor.size)} at a terminal, larger than the ${printSize(s.requiredSize)} the circuit needs`,
      `read the wire range marked on breaker and outlet; where ${printSize(s.conductor.size)} does not fit, splice a tail of ${printSize(s.requiredSize)} or larger in a box with room for it, never trim strands`,
    );
  }),
};
