import { everyEdition } from "../basis/edition.js";
import type { Check } from "./finding.js";
import { eachCircuit, fail, needsPerson, notApplicable, pass } from "./outcome.js";

export const generatorBackfeed: Check = {
  id: "generator-backfeed",
  title: "A backfed breaker is held down and the inlet is marked",
  rule: { sections: everyEdition("408.36(D)"), standing: "memory" },
  run: eachCircuit(({ circuit, equipment: { generator } }) => {
    if (generator === null) return notApplicable(circuit.name, "no generator inlet");
    if (circuit.nameplate?.transfer !== "interlock") return notApplicable(circuit.name, "a transfer switch, not a backfed breaker");
    const held = circuit.nameplate.breaker_held;
    if (held === undefined)
      return needsPerson(circuit.name, "not said whether the backfed breaker is held down", "a plug-on breaker fed from its load side has a fastener");
    return held
      ? pass(circuit.name, "held down by a fastener, as entered")
      : fail(circuit.name, "a backfed plug-on breaker can be pulled off with its stabs live", "add the retaining kit listed for this panel");
  }),
};
