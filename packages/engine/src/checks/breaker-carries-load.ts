import { everyEdition } from "../basis/edition.js";
import { decimal } from "../quantity.js";
import type { Check } from "./finding.js";
import { eachRun, fail, pass } from "./outcome.js";

export const breakerCarriesLoad: Check = {
  id: "breaker-carries-load",
  title: "The breaker carries the load, 125 % of what is continuous",
  rule: { sections: everyEdition("210.20(A)"), standing: "memory" },
  run: eachRun(({ run, rating, breaker }) =>
    decimal(rating).lt(breaker.value)
      ? fail(run.name, `${rating} A is less than the ${breaker.value} A the load asks`, `use ${breaker.value} A`)
      : pass(run.name, `${rating} A, least ${breaker.value} A`),
  ),
};
