import { article220, type Edition, type PerEdition } from "../basis/edition.js";
import { decimal, print } from "../quantity.js";
import type { Worked } from "../worked.js";
import { type LoadRule, loadLine } from "./load-line.js";

/** The part of a motor or air conditioner that joins it in the comparison when it is not the largest. From memory, 2020 on. */
const MOTOR_PART: PerEdition<string> = { "2017": "0", "2020": "0.25", "2023": "0.25", "2026": "0.25" };
const RULE: LoadRule = { sections: article220("60"), standing: { "2017": "published", "2020": "memory", "2023": "memory", "2026": "memory" } };

export interface NoncoincidentLoad {
  readonly name: string;
  readonly va: number;
  /** A motor or air-conditioning load. */
  readonly motor: boolean;
  /** The part of it that is a motor, where that is not the whole: the compressor of a heat pump with electric heat. */
  readonly motorVA?: number;
}

export interface Noncoincident {
  readonly total: Worked;
  readonly steps: readonly Worked[];
  /** The load that counts; null when there is none. */
  readonly counted: NoncoincidentLoad | null;
  /** The motor that counts at 125 % already, so that it is not the largest motor once more. */
  readonly motorIncreased: boolean;
}

/** The motor in a load, VA; none in a heater. */
export const motorIn = ({ va, motor, motorVA }: NoncoincidentLoad): number => motorVA ?? (motor ? va : 0);

/**
 * The larger of loads unlikely to run together, in VA. 220.60. From 2020 a motor load that is not the largest is compared at 125 %; where
 * another motor outside the set is the largest of all, only by how much it is exceeded, so that each way of running is summed whole.
 */
export function noncoincidentLoad(given: {
  readonly id: string;
  readonly loads: readonly NoncoincidentLoad[];
  /** The largest motor outside the set in VA, which has its 25 % on a line of its own. */
  readonly otherMotorVA?: number;
  readonly edition: Edition;
}): Noncoincident {
  const { id, loads, otherMotorVA = 0, edition } = given;
  const largest = loads.reduce<NoncoincidentLoad | null>((a, b) => (a === null || b.va > a.va ? b : a), null);
  const part = decimal(MOTOR_PART[edition]);
  const increase = (load: NoncoincidentLoad) => part.times(Math.max(0, motorIn(load) - otherMotorVA));
  // The largest, where it is a motor alone, has its quarter on a line of its own; but not where another, so increased, would pass it by.
  const passed = largest !== null && loads.some((load) => load !== largest && increase(load).plus(load.va).gt(largest.va));
  const compared = loads.map((load) => {
    const motor = motorIn(load);
    const added = load !== largest || motor < load.va || passed ? increase(load) : decimal(0);
    const plain = `${print(load.va)} VA`;
    const expression = added.isZero()
      ? plain
      : otherMotorVA === 0 && motor === load.va
        ? `${plain} × ${part.plus(1).toFixed()}`
        : `${plain} + ${part.toFixed()} × (${print(motor)} VA - ${print(otherMotorVA)} VA)`;
    return { load, expression, increased: !added.isZero(), weight: added.plus(load.va) };
  });
  const first = compared.find(({ load }) => load === largest);
  const most = compared.reduce((a, b) => (a !== undefined && b.weight.gt(a.weight) ? b : a), first);
  const total = loadLine({
    id,
    label: most ? `Larger of loads not used together: ${most.load.name}` : "Loads not used together",
    value: most?.weight ?? decimal(0),
    expression: compared.length > 1 ? `max(${compared.map((c) => c.expression).join("; ")})` : (most?.expression ?? "0 VA"),
    rules: [RULE],
    edition,
  });
  return { total, steps: [total], counted: most?.load ?? null, motorIncreased: most?.increased ?? false };
}
