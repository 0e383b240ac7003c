import { everyEdition } from "../basis/edition.js";
import { legOf } from "../service/panel-spaces.js";
import type { Check } from "./finding.js";
import { eachRun, fail, pass } from "./outcome.js";

export const breakerAdjacentSpaces: Check = {
  id: "breaker-adjacent-spaces",
  title: "A two-pole breaker takes two adjacent spaces on opposite legs",
  rule: { sections: everyEdition("240.15(B)"), standing: "published" },
  run: eachRun(({ run }) => {
    const { poles, spaces } = run.breaker;
    if (poles === 1)
      return spaces.length === 1 ? pass(run.name, "one pole in one space") : fail(run.name, "a one-pole breaker is given two spaces", "name one space");
    const [a, b] = spaces;
    if (a === undefined || b === undefined) return fail(run.name, "a two-pole breaker takes two spaces", "name two adjacent spaces such as 13 and 15");
    return Math.abs(a - b) === 2 && legOf(a) !== legOf(b)
      ? pass(run.name, `spaces ${a} and ${b} are adjacent, on ${legOf(a)} and ${legOf(b)}`)
      : fail(
          run.name,
          `spaces ${a} and ${b} are not adjacent on opposite legs: both hots could land on one leg, which loads the neutral with the sum`,
          `use ${a} and ${a + 2} if both are free`,
        );
  }),
};
