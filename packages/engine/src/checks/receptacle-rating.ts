import { everyEdition } from "../basis/edition.js";
import { decimal, print } from "../quantity.js";
import type { Check } from "./finding.js";
import { eachCircuit, fail, notApplicable, pass } from "./outcome.js";

/** A 50 A receptacle may stand on 40 A for a range or a car charger of that size: there is no 40 A receptacle. */
const FIFTY_ON_FORTY = ["range", "ev-supply"];

export const receptacleRating: Check = {
  id: "receptacle-rating",
  title: "A single receptacle is rated at least as its circuit",
  rule: { sections: everyEdition("210.21(B)(1)"), standing: "memory" },
  run: eachCircuit(({ circuit, rating, equipment: { kind, receptacle, ampacity } }) => {
    if (receptacle === null) return notApplicable(circuit.name, "hard-wired: no receptacle");
    const { amperes } = receptacle;
    if (kind === "welder")
      return decimal(ampacity.value).gt(amperes)
        ? fail(
            circuit.name,
            `a ${amperes} A receptacle for a welder that asks ${print(ampacity.value)} A of its conductors`,
            "use a larger receptacle or hard-wire it",
          )
        : pass(circuit.name, `${amperes} A receptacle, the welder's conductors ${print(ampacity.value)} A: exception for welders`);
    const serves = decimal(rating).eq(amperes) || (FIFTY_ON_FORTY.includes(kind) && amperes === 50 && Number(rating) === 40);
    return serves
      ? pass(circuit.name, `${amperes} A receptacle on ${rating} A`)
      : fail(circuit.name, `a ${amperes} A receptacle on a ${rating} A breaker`, `use a ${amperes} A breaker`);
  }),
};
