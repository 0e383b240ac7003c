import { everyEdition } from "../basis/edition.js";
import type { Check } from "./finding.js";
import { eachCircuit, fail, notApplicable, pass } from "./outcome.js";

export const generatorNeutral: Check = {
  id: "generator-neutral",
  title: "The neutral has one bond while the generator runs",
  rule: { sections: everyEdition("250.30, 250.34(C)"), standing: "one-source" },
  run: eachCircuit(({ circuit, equipment: { generator } }) => {
    if (generator === null) return notApplicable(circuit.name, "no generator inlet");
    const { met, needed, says } = generator.neutralSwitching;
    return met
      ? pass(circuit.name, says)
      : fail(
          circuit.name,
          says,
          needed === "switched"
            ? "use transfer equipment that switches the neutral, or a generator with a floating neutral"
            : "use equipment that keeps the neutral solid",
        );
  }),
};
