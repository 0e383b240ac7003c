import { everyEdition } from "../basis/edition.js";
import type { Check } from "./finding.js";
import { eachCircuit, fail, needsPerson, notApplicable, pass } from "./outcome.js";

export const airConditionerMocp: Check = {
  id: "air-conditioner-mocp",
  title: "The breaker of an air conditioner is not over its marked maximum",
  rule: { sections: everyEdition("440.22"), standing: "published" },
  run: eachCircuit(({ circuit, rating, equipment: { kind, overcurrent } }) => {
    if (kind !== "air-conditioner") return notApplicable(circuit.name, "not an air conditioner or heat pump");
    const most = overcurrent.most;
    if (most === null) return notApplicable(circuit.name, "no standard rating known here is so large");
    if (Number(rating) > most.rating)
      return fail(circuit.name, `${rating} A is over ${most.rating} A, the most allowed; this one is never rounded up`, `use ${most.rating} A or less`);
    return circuit.nameplate?.minimum_ampacity === undefined
      ? needsPerson(
          circuit.name,
          `${rating} A, within ${most.rating} A by 175 % of the compressor and the rest, rounded down`,
          "where the nameplate marks a maximum overcurrent device, that figure governs: enter it",
        )
      : pass(circuit.name, `${rating} A; marked maximum ${most.rating} A`);
  }),
};
