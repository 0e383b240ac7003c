import { everyEdition } from "../basis/edition.js";
import type { Check } from "./finding.js";
import { eachCircuit, fail, needsPerson, notApplicable, pass } from "./outcome.js";

export const spaGfci: Check = {
  id: "spa-gfci",
  title: "The outlet of a spa has ground-fault protection",
  rule: { sections: everyEdition("680.44"), standing: "one-source" },
  run: eachCircuit(({ circuit, equipment: { kind, gfci } }) => {
    if (kind !== "spa") return notApplicable(circuit.name, "not a spa");
    if (circuit.breaker.gfci) return pass(circuit.name, "the breaker is a GFCI");
    if (circuit.nameplate?.gfci_in_disconnect) return pass(circuit.name, "a GFCI breaker in the disconnect near the spa, as entered");
    if (gfci.required === "yes") return fail(circuit.name, `no GFCI: ${gfci.says}`, "use a GFCI breaker here or in the disconnect near the spa");
    return gfci.required === "ask"
      ? needsPerson(circuit.name, gfci.says, "ask the authority, or use a GFCI breaker, which settles it")
      : notApplicable(circuit.name, gfci.says);
  }),
};
