import { citeOther } from "../basis/citation.js";
import type { Edition } from "../basis/edition.js";
import { type Decimal, decimal, type Numeric, print } from "../quantity.js";
import type { Size } from "../tables/size.js";
import { type Worked, worked } from "../worked.js";
import type { AcDropMethod } from "./drop-method.js";
import { type ConductorRun, type Impedance, loopImpedance, runImpedance, series } from "./impedance.js";

const EFFECTIVE = citeOther("NFPA 70", "Chapter 9 Table 9 note 2: Ze = R cos θ + X sin θ", "published");
const EXACT = citeOther("IEEE Std 141", "exact voltage drop from the source voltage", "one-source");

/** A run out and back; `neutral` is the size of the return where it is not the size of the hots. */
export interface AcSegment extends ConductorRun {
  readonly neutral?: Size;
}

export interface AcDropGiven {
  readonly current: Numeric;
  /** Power factor of the load, 0 to 1, lagging. */
  readonly powerFactor: Numeric;
  /** Volts at the source between the two conductors of the loop. The effective method does not use it. */
  readonly sourceVolts: Numeric;
  readonly segments: readonly AcSegment[];
  readonly method: AcDropMethod;
  readonly edition: Edition;
}

/** Volts in phase with the load's voltage and across it, from a current through an impedance. */
export function lost({ current, powerFactor }: Pick<AcDropGiven, "current" | "powerFactor">, { r, x }: Impedance) {
  const cos = decimal(powerFactor);
  if (cos.lt(0) || cos.gt(1)) throw new RangeError(`a power factor is 0 to 1, not ${print(cos)}`);
  const sin = decimal(1).minus(cos.times(cos)).sqrt();
  return { cos, sin, along: r.times(cos).plus(x.times(sin)).times(current), across: x.times(cos).minus(r.times(sin)).times(current) };
}

/** Source voltage less receiving voltage, solving VS = |VR + I Z| for VR; null when the source cannot drive that current through it. */
function exactDrop(sourceVolts: Numeric, along: Decimal, across: Decimal): Decimal | null {
  const inside = decimal(sourceVolts).pow(2).minus(across.pow(2));
  if (inside.isNegative()) return null;
  const receiving = inside.sqrt().minus(along);
  return receiving.isNegative() ? null : decimal(sourceVolts).minus(receiving);
}

/** Out and back through each segment; a three-wire load with nothing in the neutral goes out and back in the hots. */
export const outAndBack = (segments: readonly AcSegment[], neutral: boolean): readonly ConductorRun[] =>
  segments.flatMap((segment) => [segment, { ...segment, size: neutral ? (segment.neutral ?? segment.size) : segment.size }]);

export interface AcDrop {
  readonly resistance: Worked;
  readonly reactance: Worked;
  readonly drop: Worked;
}

/**
 * Voltage lost out and back along a chain of segments by Table 9, in volts, each segment with its own conductor, raceway material,
 * conductor temperature (°C) and number in parallel. `ac-effective`: I (R cos θ + X sin θ). `ac-exact`: VS − VR with
 * VS = |VR + I Z| solved for VR. Current in amperes, one-way lengths in feet. Null when Table 9 lacks a conductor, or when the source
 * cannot drive the current through so long a run.
 */
export function acDrop(given: AcDropGiven & { readonly id: string; readonly label: string; readonly through?: "neutral" | "hots" }): AcDrop | null {
  const { id, current, sourceVolts, method, edition } = given;
  const found = loopImpedance({ id, label: given.label, runs: outAndBack(given.segments, given.through !== "hots"), edition });
  if (found === null) return null;
  const { resistance, reactance, impedance } = found;
  const { cos, sin, along, across } = lost(given, impedance);
  const value = method === "ac-effective" ? along : exactDrop(sourceVolts, along, across);
  if (value === null) return null;
  const [r, x, c, s] = [print(impedance.r, 8), print(impedance.x, 8), print(cos, 4), print(sin, 6)];
  const [amperes, volts] = [print(current, 3), print(sourceVolts, 3)];
  const inPhase = `${amperes} A × (${r} × ${c} + ${x} × ${s})`;
  const [a, b] = [print(along, 6), print(across, 6)];
  const drop = worked({
    id,
    label: given.label,
    value: value.toSignificantDigits(16).toFixed(),
    unit: "V",
    expression:
      method === "ac-effective"
        ? inPhase
        : `${volts} V − (√(${volts} × ${volts} − (${amperes} × (${x} × ${c} − ${r} × ${s})) × (${amperes} × (${x} × ${c} − ${r} × ${s}))) − ${inPhase}) = ${volts} V − (√(${volts}² − (${b})²) − ${a} V)`,
    inputs: [resistance.id, reactance.id],
    citations: [method === "ac-effective" ? EFFECTIVE : EXACT],
    edition,
  });
  return { resistance, reactance, drop };
}

/**
 * The two drops of a 120/240 V three-wire run: a balanced load, all its current in the hots, on the line-to-line volts; and the
 * worst leg, all its current back through the neutral, on half of them. Null as {@link acDrop}.
 */
export function threeWireDrops(
  given: Omit<AcDropGiven, "sourceVolts"> & { readonly id: string; readonly label: string; readonly lineToLineVolts: Numeric },
): { readonly balanced: AcDrop; readonly worstLeg: AcDrop } | null {
  const volts = decimal(given.lineToLineVolts);
  const balanced = acDrop({ ...given, id: `${given.id}.balanced`, label: `${given.label}, balanced`, sourceVolts: volts, through: "hots" });
  const worstLeg = acDrop({ ...given, id: `${given.id}.leg`, label: `${given.label}, one leg alone`, sourceVolts: volts.div(2), through: "neutral" });
  return balanced && worstLeg && { balanced, worstLeg };
}

/** The volts of {@link acDrop} alone, by way of the neutral, for trying sizes; null as there. */
export function acLostVolts(given: AcDropGiven): Decimal | null {
  const runs = outAndBack(given.segments, true).map((run) => runImpedance(run, given.edition));
  if (runs.includes(null)) return null;
  const { along, across } = lost(given, series(...runs.flatMap((run) => run ?? [])));
  return given.method === "ac-effective" ? along : exactDrop(given.sourceVolts, along, across);
}
