import { citeOther } from "../basis/citation.js";
import type { Edition } from "../basis/edition.js";
import { type Decimal, decimal, type Numeric, print, significant } from "../quantity.js";
import type { Material } from "../sizing/ampacity.js";
import { type ConductorRun, type Impedance, loopImpedance, magnitude, series } from "../sizing/impedance.js";
import type { ConduitMaterial } from "../tables/impedance.js";
import type { Size } from "../tables/size.js";
import { type Worked, worked } from "../worked.js";
import { type FaultSource, sourceImpedance } from "./fault-source.js";

const OHM = citeOther("Ohm's law", "I = V / √(R² + X²), resistances and reactances added apart", "practice");

export const FAULT_PATHS = ["line-to-line", "line-to-neutral", "line-to-ground"] as const;
export type FaultPath = (typeof FAULT_PATHS)[number];
const WORDS: Readonly<Record<FaultPath, string>> = { "line-to-line": "line to line", "line-to-neutral": "line to neutral", "line-to-ground": "line to ground" };

/** One stretch from the source on. Before the main bonding jumper there is no grounding conductor: a ground fault returns in the neutral. */
export interface FaultSegment {
  readonly name: string;
  readonly material: Material;
  readonly conduit: ConduitMaterial;
  readonly feet: Numeric;
  readonly celsius: Numeric;
  readonly parallel?: number;
  readonly hot: Size;
  readonly neutral: Size | null;
  readonly grounding: { readonly size: Size; readonly material: Material; readonly parallel?: number } | null;
  readonly supplySide: boolean;
}

/** The conductors a fault at a segment's end adds to its path; null where the segment has no such return. */
export function faultRuns(segment: FaultSegment, path: FaultPath): readonly ConductorRun[] | null {
  const hot: ConductorRun = { ...segment, size: segment.hot };
  if (path === "line-to-line") return [hot, hot];
  if (path === "line-to-neutral" || segment.supplySide) return segment.neutral === null ? null : [hot, { ...hot, size: segment.neutral }];
  const { grounding } = segment;
  return grounding && [hot, { ...hot, size: grounding.size, material: grounding.material, parallel: grounding.parallel ?? segment.parallel ?? 1 }];
}

export interface FaultLevel {
  readonly at: string;
  readonly impedance: Impedance;
  readonly total: Worked;
  readonly amperes: Worked;
  /** Every worked line of this point, in order, `total` and `amperes` last. */
  readonly steps: readonly Worked[];
}

export interface FaultGiven {
  readonly id: string;
  readonly source: FaultSource;
  /** Volts line to line; faults to neutral and ground are driven by half. */
  readonly volts: Numeric;
  readonly segments: readonly FaultSegment[];
  readonly path: FaultPath;
  readonly edition: Edition;
}

/** Volts that drive a fault, of a supply's volts line to line. */
const driving = (volts: Numeric, path: FaultPath) => (path === "line-to-line" ? decimal(volts) : decimal(volts).div(2));

/** The first point of a chain: the fault current at the source itself. */
export function faultAtSource(given: Omit<FaultGiven, "segments">): FaultLevel {
  const { id, path, edition } = given;
  const source = sourceImpedance({ id, source: given.source, volts: given.volts, through: path === "line-to-line" ? "lines" : "neutral" });
  return faultBehind({ id, at: "the source", path, impedance: source.impedance, volts: driving(given.volts, path), steps: source.steps, edition });
}

/**
 * The next point of a chain, at the end of segments in series: their impedance added to that before them. Null where Table 9 lacks
 * a conductor or a segment has no return for the path.
 */
export function faultBeyond(given: Omit<FaultGiven, "source"> & { readonly at: string; readonly before: FaultLevel }): FaultLevel | null {
  const { id, at, before, path, edition } = given;
  const runs = given.segments.map((segment) => faultRuns(segment, path));
  if (runs.includes(null)) return null;
  const loop = loopImpedance({ id, label: `Conductors to ${at}, ${WORDS[path]}`, runs: runs.flatMap((run) => run ?? []), edition });
  if (!loop) return null;
  const impedance = series(before.impedance, loop.impedance);
  const sums = (["r", "x"] as const).map((axis) => sumStep(id, `${at}, ${WORDS[path]}`, axis, before, loop.impedance, edition));
  return faultBehind({ id, at, path, impedance, volts: driving(given.volts, path), steps: [loop.resistance, loop.reactance, ...sums], edition });
}

/**
 * Symmetrical fault current along a chain, in amperes: at the source's terminals and at the end of each segment, of a bolted fault
 * line to line, to neutral or to ground. R + jX of source and conductors (Table 9) are summed apart. Motors add nothing here. Null
 * where Table 9 lacks a conductor or a segment has no return for the path. Cold conductors (25 °C) give the highest figure.
 */
export function faultCurrents(given: FaultGiven): readonly FaultLevel[] | null {
  let last = faultAtSource({ ...given, id: `${given.id}.source` });
  const levels: FaultLevel[] = [last];
  for (const [index, segment] of given.segments.entries()) {
    const next = faultBeyond({ ...given, id: `${given.id}.${index + 1}`, at: segment.name, segments: [segment], before: last });
    if (!next) return null;
    last = next;
    levels.push(last);
  }
  return levels;
}

function sumStep(id: string, to: string, axis: "r" | "x", before: FaultLevel, added: Impedance, edition: Edition): Worked {
  const name = axis === "r" ? "resistance" : "reactance";
  return worked({
    id: `${id}.path-${name}`,
    label: `Path ${name} to ${to}`,
    value: before.impedance[axis].plus(added[axis]).toSignificantDigits(20).toFixed(),
    unit: "ohm",
    expression: `${print(before.impedance[axis], 8)} Ω + ${print(added[axis], 8)} Ω`,
    inputs: [before.total.inputs[axis === "r" ? 0 : 1]!, `${id}.${name}`],
    edition,
  });
}

/** Digits of an impedance and a current: tables and sources give three, and a chain of sums keeps its own. */
const DIGITS = 10;

/** A point of a chain whose impedance in the fault's path is known: what flows there, driven by `volts`. */
export function faultBehind(given: {
  readonly id: string;
  readonly at: string;
  readonly path: FaultPath;
  readonly impedance: Impedance;
  readonly volts: Decimal;
  readonly steps: readonly Worked[];
  readonly edition: Edition;
}): FaultLevel {
  const { id, at, path, impedance, volts, steps, edition } = given;
  const near = Math.hypot(impedance.r.toNumber(), impedance.x.toNumber());
  const [r, x] = [print(impedance.r, 8), print(impedance.x, 8)];
  const total = worked({
    id: `${id}.total`,
    label: `Impedance of the fault path at ${at}, ${WORDS[path]}`,
    value: significant(near, DIGITS, () => magnitude(impedance)),
    unit: "ohm",
    expression: `√(${r} × ${r} + ${x} × ${x})`,
    inputs: steps.slice(-2).map((step) => step.id),
    edition,
  });
  const amperes = worked({
    id: `${id}.amperes`,
    label: `Available fault current at ${at}, ${WORDS[path]}`,
    value: significant(volts.toNumber() / near, DIGITS, () => volts.div(magnitude(impedance))),
    unit: "A",
    expression: `${print(volts)} V / ${print(total.value, 8)} Ω`,
    inputs: [total.id],
    citations: [OHM],
    edition,
  });
  return { at, impedance, total, amperes, steps: [...steps, total, amperes] };
}
