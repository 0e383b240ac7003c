import { article220, type Edition } from "../basis/edition.js";
import { Decimal, decimal, type Numeric, print } from "../quantity.js";
import type { Worked } from "../worked.js";
import { type LoadSum, loadLine, loadRule } from "./load-line.js";

const UNBALANCE = loadRule(article220("61(A)"), "published");
const SEVENTY = loadRule(article220("61(B)(1)"), "published");
const OVER_200 = loadRule(article220("61(B)(2)"), "published");
const FULL_AMPERES = 200;

export interface NeutralGiven {
  /** Load between a hot and the neutral, after demand factors, in VA. Loads of 240 V alone stay out. */
  readonly lineToNeutralVA: Numeric;
  /** Demand of ranges, ovens and cooktops in VA. */
  readonly cookingVA: Numeric;
  /** Demand of clothes dryers in VA. */
  readonly dryersVA: Numeric;
  /** Line-to-line volts of the single-phase 3-wire supply. */
  readonly volts: Numeric;
}

/**
 * Load of a single-phase 3-wire feeder or service neutral in amperes: line-to-neutral load whole, cooking and dryers at 70 %, then 70 % of
 * what is over 200 A. 220.61. Not for two legs of a 208Y/120 V supply, whose neutral is not reduced.
 */
export function neutralLoad(given: { readonly id: string; readonly load: NeutralGiven; readonly edition: Edition }): LoadSum {
  const { id, load, edition } = given;
  const seventy = (key: string, label: string, va: Numeric) =>
    loadLine({ id: `${id}.${key}`, label, value: decimal(va).times("0.7"), expression: `${print(va)} VA × 0.70`, rules: [SEVENTY], edition });
  const direct = loadLine({
    id: `${id}.line-to-neutral`,
    label: "Line-to-neutral load",
    value: decimal(load.lineToNeutralVA),
    expression: `${print(load.lineToNeutralVA)} VA`,
    rules: [UNBALANCE],
    edition,
  });
  const cooking = seventy("cooking", "Cooking appliances at 70 %", load.cookingVA);
  const dryers = seventy("dryers", "Clothes dryers at 70 %", load.dryersVA);
  const parts = [direct, cooking, dryers];
  const sum = loadLine({
    id: `${id}.sum`,
    label: "Neutral load",
    value: parts.reduce((all, line) => all.plus(line.value), decimal(0)),
    expression: parts.map((line) => `${print(line.value)} VA`).join(" + "),
    inputs: parts,
    edition,
  });
  const amperes = loadLine({
    id: `${id}.amperes`,
    label: "Neutral current",
    value: decimal(sum.value).div(load.volts),
    unit: "A",
    expression: `${print(sum.value)} VA / ${print(load.volts)} V`,
    inputs: [sum],
    edition,
  });
  const further = neutralOver200({ id: `${id}.total`, amperes: amperes.value, from: [amperes], edition });
  return { total: further, steps: [...parts, sum, amperes, further] };
}

/** A neutral current in amperes with the further factor: 200 A whole, 70 % of the rest. 220.61(B)(2). */
export function neutralOver200(given: { readonly id: string; readonly amperes: Numeric; readonly from?: readonly Worked[]; readonly edition: Edition }) {
  const amperes = decimal(given.amperes);
  const first = Decimal.min(FULL_AMPERES, amperes);
  const rest = amperes.minus(first);
  return loadLine({
    id: given.id,
    label: rest.isZero() ? "Neutral current to size for" : "Neutral current, 70 % of what is over 200 A",
    value: first.plus(rest.times("0.7")),
    unit: "A",
    expression: rest.isZero() ? `${print(first)} A` : `${print(first)} A + ${print(rest)} A × 0.70`,
    inputs: given.from ?? [],
    rules: [rest.isZero() ? UNBALANCE : OVER_200],
    edition: given.edition,
  });
}
