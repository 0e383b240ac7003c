import { everyEdition } from "../basis/edition.js";
import { decimal } from "../quantity.js";
import { standardRatingAtLeast } from "../sizing/overcurrent.js";
import type { Check } from "./finding.js";
import { eachRun, fail, pass } from "./outcome.js";

export const breakerStandardRating: Check = {
  id: "breaker-standard-rating",
  title: "The breaker has a standard rating",
  rule: { sections: everyEdition("240.6(A)"), standing: "published" },
  run: eachRun(({ run, rating }, { basis }) => {
    const next = standardRatingAtLeast(rating, basis.edition);
    return next !== null && decimal(rating).eq(next)
      ? pass(run.name, `${rating} A is standard`)
      : fail(run.name, `${rating} A is not a standard rating`, next === null ? "choose a standard rating up to 400 A" : `the next above is ${next} A`);
  }),
};
