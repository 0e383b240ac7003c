import { type Edition, everyEdition } from "../basis/edition.js";
import { decimal, print } from "../quantity.js";
import type { Worked } from "../worked.js";
import { largestMotorQuarter } from "./largest-motor.js";
import { type LoadSum, loadLine, loadRule } from "./load-line.js";

const SIZING = loadRule(everyEdition("215.2(A)"), "published");
const DEVICE = loadRule(everyEdition("215.3"), "published");

/** A load behind a feeder. A motor is counted by 430.24, so neither continuous nor noncontinuous here. */
export interface OutbuildingLoad {
  readonly name: string;
  readonly va: number;
  /** Continuous: expected to run three hours or more. */
  readonly duty: "continuous" | "noncontinuous" | "motor";
}

export interface OutbuildingFeeder extends LoadSum {
  /** What the conductors and the overcurrent device must carry in amperes: with 125 % of the continuous part. */
  readonly sizing: Worked;
  /** The load itself in amperes. */
  readonly amperes: Worked;
}

/**
 * Load of a feeder to a garage or shed panel in VA: the sum of its loads with a quarter of the largest motor, and the amperes to size it
 * by, continuous loads at 125 %. 215.2(A), 215.3, 430.24. No demand factor.
 */
export function outbuildingFeederLoad(given: {
  readonly id: string;
  readonly loads: readonly OutbuildingLoad[];
  readonly volts: number;
  readonly edition: Edition;
}): OutbuildingFeeder {
  const { id, loads, volts, edition } = given;
  const of = (duty: OutbuildingLoad["duty"], label: string) => {
    const parts = loads.filter((load) => load.duty === duty);
    return loadLine({
      id: `${id}.${duty}`,
      label,
      value: parts.reduce((sum, load) => sum.plus(load.va), decimal(0)),
      expression: parts.map((load) => `${print(load.va)} VA (${load.name})`).join(" + ") || "0 VA",
      edition,
    });
  };
  const noncontinuous = of("noncontinuous", "Noncontinuous loads");
  const continuous = of("continuous", "Continuous loads");
  const motors = of("motor", "Motors");
  const quarter = largestMotorQuarter({ id: `${id}.largest-motor`, motorsVA: loads.filter((load) => load.duty === "motor").map((load) => load.va), edition });
  const parts = [noncontinuous, continuous, motors, quarter];
  const total = loadLine({
    id: `${id}.total`,
    label: "Load of the feeder",
    value: parts.reduce((sum, line) => sum.plus(line.value), decimal(0)),
    expression: parts.map((line) => `${print(line.value)} VA`).join(" + "),
    inputs: parts,
    edition,
  });
  const amperes = loadLine({
    id: `${id}.amperes`,
    label: "Current of the feeder",
    value: decimal(total.value).div(volts),
    unit: "A",
    expression: `${print(total.value)} VA / ${volts} V`,
    inputs: [total],
    edition,
  });
  const sizing = loadLine({
    id: `${id}.sizing`,
    label: "Current to size the feeder by, continuous loads at 125 %",
    value: decimal(continuous.value).times("0.25").plus(total.value).div(volts),
    unit: "A",
    expression: `(${print(noncontinuous.value)} VA + 1.25 × ${print(continuous.value)} VA + ${print(motors.value)} VA + ${print(quarter.value)} VA) / ${volts} V`,
    inputs: parts,
    rules: [SIZING, DEVICE],
    edition,
  });
  return { total, amperes, sizing, steps: [...parts, total, amperes, sizing] };
}
