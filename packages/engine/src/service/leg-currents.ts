import { article220, type Edition, everyEdition } from "../basis/edition.js";
import { decimal, print } from "../quantity.js";
import type { Worked } from "../worked.js";
import { loadLine, loadRule } from "./load-line.js";

const UNBALANCE = loadRule(article220("61(A)"), "published");
const MOTOR = loadRule(everyEdition("430.24"), "published");
const WIRES = ["L1", "neutral", "L2"] as const;
export type Wire = (typeof WIRES)[number];

/** A load in amperes on each wire: one appliance, or two that share a neutral, whose larger is then the neutral's. */
export interface LegRow {
  readonly name: string;
  readonly amperes: Readonly<Record<Wire, number>>;
  /** The wires on which this row's current is a motor's. */
  readonly motorOn: readonly Wire[];
}

/**
 * Amperes on each leg and the neutral of a single-phase 3-wire supply: what is there, each added row, and a quarter of the largest motor on
 * that wire. 220.61(A), 430.24.
 */
export function legCurrents(given: {
  readonly id: string;
  readonly base: Readonly<Record<Wire, number>>;
  readonly rows: readonly LegRow[];
  readonly edition: Edition;
}): Readonly<Record<Wire, { readonly motor: Worked; readonly total: Worked }>> {
  const on = (wire: Wire) => {
    const largest = Math.max(0, ...given.rows.filter((row) => row.motorOn.includes(wire)).map((row) => row.amperes[wire]));
    const motor = loadLine({
      id: `${given.id}.${wire}.motor`,
      label: `25 % of the largest motor, ${wire}`,
      value: decimal(largest).times("0.25"),
      unit: "A",
      expression: `${print(largest)} A × 0.25`,
      rules: [MOTOR],
      edition: given.edition,
    });
    const rows = given.rows.filter((row) => row.amperes[wire] !== 0);
    const total = loadLine({
      id: `${given.id}.${wire}`,
      label: `Current, ${wire}`,
      value: rows.reduce((sum, row) => sum.plus(row.amperes[wire]), decimal(given.base[wire]).plus(motor.value)),
      unit: "A",
      expression: [`${print(given.base[wire])} A`, ...rows.map((row) => `${print(row.amperes[wire])} A (${row.name})`), `${print(motor.value)} A`].join(" + "),
      inputs: [motor],
      rules: wire === "neutral" ? [UNBALANCE] : [],
      edition: given.edition,
    });
    return { motor, total };
  };
  return { L1: on("L1"), neutral: on("neutral"), L2: on("L2") };
}
