import type { Edition } from "../basis/edition.js";
import { Decimal, decimal, type Numeric, print } from "../quantity.js";
import { readCell } from "../tables/code-table.js";
import { AC_IMPEDANCE, type ConduitMaterial, impedanceColumns } from "../tables/impedance.js";
import type { Size } from "../tables/size.js";
import { type Cell, type Worked, worked } from "../worked.js";
import type { Material } from "./ampacity.js";
import { printTemperatureFactor, shared, TABLE_CELSIUS, TEMPERATURE_CITE, THOUSANDTH, temperatureFactor } from "./resistance.js";

/** Resistance and reactance in ohms, in series. */
export interface Impedance {
  readonly r: Decimal;
  readonly x: Decimal;
}

export const NO_IMPEDANCE: Impedance = { r: new Decimal(0), x: new Decimal(0) };
export const series = (...parts: readonly Impedance[]): Impedance =>
  parts.reduce((sum, part) => ({ r: sum.r.plus(part.r), x: sum.x.plus(part.x) }), NO_IMPEDANCE);
export const magnitude = ({ r, x }: Impedance): Decimal => r.times(r).plus(x.times(x)).sqrt();

/** One conductor of a run, one way: `parallel` like it share the current. */
export interface ConductorRun {
  readonly size: Size;
  readonly material: Material;
  readonly conduit: ConduitMaterial;
  readonly feet: Numeric;
  readonly celsius?: Numeric;
  readonly parallel?: number;
}

export interface RunImpedance extends Impedance {
  readonly cells: readonly Cell[];
  /** Resistance of the run as a pencil would write it. */
  readonly shownR: string;
  readonly shownX: string;
  readonly corrected: boolean;
  /** Ohm per 1000 ft: the resistance at the run's temperature, and the reactance, which has none. */
  readonly perThousand: Impedance;
}

/** Table 9 resistance, at the conductor's temperature, and reactance of one way of a run; null where Table 9 has no such conductor. */
export function runImpedance(run: ConductorRun, edition: Edition): RunImpedance | null {
  const { size, material, feet, celsius = TABLE_CELSIUS, parallel = 1 } = run;
  const columns = impedanceColumns(material, run.conduit);
  const r = readCell(AC_IMPEDANCE, size, columns.r, edition);
  const x = readCell(AC_IMPEDANCE, size, columns.x, edition);
  if (r === null || x === null) return null;
  const perThousand = { r: decimal(r.value).times(temperatureFactor(material, celsius)), x: decimal(x.value) };
  const over = `${print(feet, 3)} ft${parallel > 1 ? ` / ${parallel}` : ""}`;
  const whole = (ohms: Decimal) => shared(ohms.times(THOUSANDTH).times(feet), parallel);
  return {
    r: whole(perThousand.r),
    x: whole(perThousand.x),
    cells: [r, x],
    shownR: `${r.value} Ω / 1000 ft${printTemperatureFactor(material, celsius)} × ${over}`,
    shownX: `${x.value} Ω / 1000 ft × ${over}`,
    corrected: !decimal(celsius).eq(TABLE_CELSIUS),
    perThousand,
  };
}

/** The way back is often the way there: one reading serves both. */
const alike = (a: ConductorRun, b: ConductorRun): boolean =>
  a.size === b.size && a.material === b.material && a.conduit === b.conduit && a.feet === b.feet && a.celsius === b.celsius && a.parallel === b.parallel;

/** A sum written out, what follows itself as so many times one. */
function sumOf(terms: readonly string[]): string {
  const counted: { readonly term: string; times: number }[] = [];
  for (const term of terms) {
    const last = counted.at(-1);
    if (last?.term === term) last.times += 1;
    else counted.push({ term, times: 1 });
  }
  return counted.map(({ term, times }) => (times === 1 ? term : `${times} × ${term}`)).join(" + ") || "0 Ω";
}

/** Resistance and reactance of conductors in series, each a worked value in ohms; null when Table 9 lacks one of them. */
export function loopImpedance(given: {
  readonly id: string;
  readonly label: string;
  readonly runs: readonly ConductorRun[];
  readonly edition: Edition;
}): { readonly resistance: Worked; readonly reactance: Worked; readonly impedance: Impedance } | null {
  const parts: RunImpedance[] = [];
  for (const [i, run] of given.runs.entries()) {
    const before = given.runs[i - 1];
    const part = before !== undefined && alike(run, before) && parts.length === i ? parts[i - 1]! : runImpedance(run, given.edition);
    if (part !== null) parts.push(part);
  }
  if (parts.length < given.runs.length) return null;
  const impedance = series(...parts);
  const part = (axis: "r" | "x", name: string): Worked =>
    worked({
      id: `${given.id}.${name}`,
      label: `${given.label}, ${name}`,
      value: impedance[axis].toSignificantDigits(20).toFixed(),
      unit: "ohm",
      expression: sumOf(parts.map((p) => (axis === "r" ? p.shownR : p.shownX))),
      cells: parts.map(({ cells }) => cells[axis === "r" ? 0 : 1]!),
      citations: axis === "r" && parts.some((p) => p.corrected) ? [TEMPERATURE_CITE] : [],
      edition: given.edition,
    });
  return { resistance: part("r", "resistance"), reactance: part("x", "reactance"), impedance };
}
