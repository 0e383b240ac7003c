import { everyEdition } from "../basis/edition.js";
import { OUTLETS } from "../outlet.js";
import { decimal } from "../quantity.js";
import type { Check } from "./finding.js";
import { eachCircuit, fail, notApplicable, pass } from "./outcome.js";

export const receptacleRating: Check = {
  id: "receptacle-rating",
  title: "A single receptacle is rated at least as its circuit",
  rule: { sections: everyEdition("210.21(B)(1)"), standing: "published" },
  run: eachCircuit(({ circuit, rating }) => {
    const amperes = OUTLETS[circuit.serves].receptacleAmperes;
    if (amperes === null) return notApplicable(circuit.name, "hard-wired: no receptacle");
    return !decimal(rating).eq(amperes)
      ? fail(circuit.name, `a ${amperes} A receptacle on a ${rating} A breaker`, `use a ${amperes} A breaker`)
      : pass(circuit.name, `${amperes} A receptacle on ${rating} A`);
  }),
};
