import { everyEdition } from "../basis/edition.js";
import type { Check } from "./finding.js";
import { eachCircuit, fail, needsPerson, notApplicable, pass } from "./outcome.js";

/** Places that 210.12 names outright; other rooms of a dwelling nearly all are, but somebody has to say which. */
const CERTAIN = ["kitchen", "laundry"];

export const afci: Check = {
  id: "afci",
  title: "Arc-fault protection of 15 and 20 A circuits in the dwelling's rooms",
  rule: { sections: { ...everyEdition("210.12(A)"), "2023": "210.12(B)", "2026": "210.12(B)" }, standing: "memory" },
  run: eachCircuit(({ circuit, rating, equipment: { volts, place } }) => {
    if (volts !== 120 || Number(rating) > 20) return notApplicable(circuit.name, "not a 120 V circuit of 20 A or less");
    const certain = CERTAIN.includes(place);
    if (!certain && place !== "indoors") return notApplicable(circuit.name, `not asked in this place: ${place}`);
    if (circuit.afci) return pass(circuit.name, "an arc-fault breaker, as entered");
    return certain && circuit.afci === false
      ? fail(circuit.name, `no arc-fault protection: ${place}`, "use an arc-fault or dual-function breaker of the panel's family")
      : needsPerson(circuit.name, "arc-fault protection is not told", "asked in nearly every room of a dwelling: see which rooms the circuit serves");
  }),
};
