import { everyEdition } from "../basis/edition.js";
import { decimal, print } from "../quantity.js";
import type { Check } from "./finding.js";
import { eachRun, fail, notApplicable, pass } from "./outcome.js";
import { notRead, standsAlready } from "./standing.js";

export const breakerCarriesLoad: Check = {
  id: "breaker-carries-load",
  title: "The breaker carries the load, 125 % of what is continuous",
  rule: { sections: everyEdition("210.20(A), 215.3"), standing: "memory" },
  run: eachRun((made) => {
    const { run, rating, breaker, terminalLoad } = made;
    // An inlet is a source: a smaller breaker protects it the better. What carries a load in its own article, the bounds of it say.
    if (made.kind === "circuit" && made.equipment.source) return notApplicable(run.name, "a source, not a load");
    const least = made.kind === "circuit" ? made.equipment.overcurrent.least?.rating : Number(breaker.value);
    if (least !== undefined && decimal(rating).lt(least)) return fail(run.name, `${rating} A is less than the ${least} A the load asks`, `use ${least} A`);
    if (run.breaker.rating === undefined && standsAlready(made)) return notRead(run.name, `${rating} A`, "breaker.rating");
    const beyond = made.kind === "feeder" || least === undefined;
    return beyond && decimal(rating).lt(terminalLoad)
      ? fail(
          run.name,
          `${rating} A is less than the ${print(terminalLoad)} A the load asks`,
          "no larger rating is known here: share the load over more circuits",
        )
      : pass(run.name, least === undefined ? `${rating} A` : `${rating} A, least ${least} A`);
  }),
};
