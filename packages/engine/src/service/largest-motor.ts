import { type Edition, everyEdition } from "../basis/edition.js";
import { decimal, print } from "../quantity.js";
import type { Worked } from "../worked.js";
import { loadLine, loadRule } from "./load-line.js";

const RULE = loadRule(everyEdition("430.24"), "published");

/** A quarter of the largest motor load in VA, added once to the sum in which every motor already stands whole. 220.50, 430.24. */
export function largestMotorQuarter(given: { readonly id: string; readonly motorsVA: readonly number[]; readonly edition: Edition }): Worked {
  const largest = given.motorsVA.reduce((a, b) => Math.max(a, b), 0);
  return loadLine({
    id: given.id,
    label: "25 % of the largest motor",
    value: decimal(largest).times("0.25"),
    expression: `${print(largest)} VA × 0.25`,
    rules: [RULE],
    edition: given.edition,
  });
}
