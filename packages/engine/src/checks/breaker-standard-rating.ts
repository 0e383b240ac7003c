import { everyEdition } from "../basis/edition.js";
import { decimal } from "../quantity.js";
import { standardRatingAtLeast } from "../sizing/overcurrent.js";
import type { Check } from "./finding.js";
import { eachCircuit, fail, pass } from "./outcome.js";

export const breakerStandardRating: Check = {
  id: "breaker-standard-rating",
  title: "The breaker has a standard rating",
  rule: { sections: everyEdition("240.6(A)"), standing: "published" },
  run: eachCircuit(({ circuit, rating }, { basis }) => {
    const next = standardRatingAtLeast(rating, basis.edition);
    return next !== null && decimal(rating).eq(next)
      ? pass(circuit.name, `${rating} A is standard`)
      : fail(circuit.name, `${rating} A is not a standard rating`, next === null ? "choose a standard rating up to 400 A" : `the next above is ${next} A`);
  }),
};
