import { everyEdition } from "../basis/edition.js";
import { decimal, print } from "../quantity.js";
import type { Check } from "./finding.js";
import { eachSegment, fail, needsPerson, pass } from "./outcome.js";

export const bendRadius: Check = {
  id: "bend-radius",
  title: "Bends are not too tight",
  rule: { sections: everyEdition("Chapter 9 Table 2"), standing: "one-source" },
  run: eachSegment(({ segment, bendRadius: least, tradeSize }, _run, subject) => {
    if (least === null) return null;
    if (segment.bend_radius === undefined)
      return needsPerson(
        subject,
        `bends of trade size ${tradeSize}: ${print(least.value)} in to the centre line at least`,
        `factory elbows, or measure ${print(least.value)} in with a one-shot or full-shoe bender; more with any other`,
      );
    return decimal(segment.bend_radius).lt(least.value)
      ? fail(subject, `a bend of ${print(segment.bend_radius)} in radius, ${print(least.value)} in needed`, `bend it to ${print(least.value)} in or more`)
      : pass(subject, `${print(segment.bend_radius)} in, least ${print(least.value)} in by a one-shot bender`);
  }),
};
