import { cite, citeOther } from "../basis/citation.js";
import { type Edition, everyEdition } from "../basis/edition.js";
import { Decimal, decimal, type Numeric, print } from "../quantity.js";
import { readCell } from "../tables/code-table.js";
import { CONDUCTOR } from "../tables/conductor.js";
import { printSize, SIZES, type Size } from "../tables/size.js";
import { type Cell, type Worked, worked } from "../worked.js";
import type { Material } from "./ampacity.js";
import { printTemperatureFactor, shared, TABLE_CELSIUS, TEMPERATURE_CITE, THOUSANDTH, temperatureFactor } from "./resistance.js";

export type DropMethod = "K" | "dc-resistance";
export interface DropSegment {
  readonly size: Size;
  readonly material: Material;
  readonly feet: Numeric;
  /** Conductors that share the current; one when left out. */
  readonly parallel?: number;
  /** Size of the way back where it is not that of the way there. */
  readonly neutral?: Size;
}

/** Ohm-circular-mils per foot near 75 °C. Common practice, no code table. */
const K: Readonly<Record<Material, string>> = { copper: "12.9", aluminum: "21.2" };
const ADVISORY = {
  branch: { sections: everyEdition("210.19(A) informational note"), standing: "memory" },
  feeder: { sections: everyEdition("215.2(A) informational note"), standing: "memory" },
} as const;
const K_CITE = citeOther("K method", "VD = 2·K·I·L/cmil", "practice");

type Resisting = Pick<DropGiven, "method" | "celsius" | "edition">;

function resistanceCell(size: Size, material: Material, { method, edition }: Resisting): Cell {
  const cell = readCell(CONDUCTOR, size, method === "K" ? "cmil" : material === "copper" ? "dcCopper" : "dcAluminum", edition);
  if (cell === null) throw new RangeError(`no resistance for ${printSize(size)} ${material}`);
  return cell;
}

function ohmsPerFoot({ value }: Cell, material: Material, { method, celsius }: Resisting): Decimal {
  if (method === "K") return decimal(K[material]).div(value);
  return decimal(value)
    .times(temperatureFactor(material, celsius ?? TABLE_CELSIUS))
    .times(THOUSANDTH);
}

/** Ohms a foot as a pencil would write them. */
function shownOhms({ value }: Cell, material: Material, { method, celsius }: Resisting): string {
  if (method === "K") return `${K[material]} / ${print(value)} cmil`;
  return `${value} Ω / 1000 ft${printTemperatureFactor(material, celsius ?? TABLE_CELSIUS)}`;
}

export interface DropGiven {
  readonly current: Numeric;
  readonly segments: readonly DropSegment[];
  readonly method: DropMethod;
  /** Conductor temperature at which resistance is taken, 75 °C when left out. The K method has its own. */
  readonly celsius?: Numeric;
  readonly edition: Edition;
}

/** The volts of {@link voltageDrop} alone, for trying sizes. */
export const lostVolts = (given: DropGiven): Decimal => sumVolts(given, partsOf(given));

/** A segment out and back in one size, or out in its own and back in the neutral's. */
interface Way {
  readonly segment: DropSegment;
  readonly size: Size;
  readonly times: 1 | 2;
}
const waysOf = (segment: DropSegment): readonly Way[] =>
  segment.neutral === undefined || segment.neutral === segment.size
    ? [{ segment, size: segment.size, times: 2 }]
    : [segment.size, segment.neutral].map((size) => ({ segment, size, times: 1 }));

type Part = Way & { readonly cell: Cell };
const partsOf = (given: DropGiven): readonly Part[] =>
  given.segments.flatMap(waysOf).map((way) => ({ ...way, cell: resistanceCell(way.size, way.segment.material, given) }));

function sumVolts(given: DropGiven, parts: readonly Part[]): Decimal {
  return parts
    .reduce((sum, { segment: { feet, material, parallel = 1 }, times, cell }) => {
      const volts = ohmsPerFoot(cell, material, given).times(feet).times(given.current).times(times);
      return sum.plus(shared(volts, parallel));
    }, new Decimal(0))
    .toSignificantDigits(12);
}

/**
 * Voltage lost out and back along a chain of segments, in volts: Σ 2·I·R·L. Current in amperes, one-way length in feet.
 * The same figure is the 240 V drop of a balanced load and the drop of a 120 V leg whose whole return is in the neutral.
 */
export function voltageDrop(given: DropGiven & { readonly id: string; readonly label: string }): Worked {
  const parts = partsOf(given);
  const corrected = given.method !== "K" && given.celsius !== undefined && !decimal(given.celsius).eq(TABLE_CELSIUS);
  return worked({
    id: given.id,
    label: given.label,
    value: sumVolts(given, parts).toFixed(),
    unit: "V",
    expression: parts
      .map(
        ({ segment: { feet, material, parallel = 1 }, times, cell }) =>
          `${times === 2 ? "2 × " : ""}${print(given.current)} A × ${shownOhms(cell, material, given)} × ${print(feet, 3)} ft${parallel > 1 ? ` / ${parallel}` : ""}`,
      )
      .join(" + "),
    cells: parts.map(({ cell }) => cell),
    citations: given.method === "K" ? [K_CITE] : corrected ? [TEMPERATURE_CITE] : [],
    edition: given.edition,
  });
}

/** A drop as a per cent of a base voltage. 210.19(A) note, for a feeder 215.2(A) note: advisory unless the jurisdiction makes it a rule. */
export function dropPercent(given: {
  readonly id: string;
  readonly label: string;
  readonly drop: Worked;
  readonly volts: Numeric;
  /** What loses it; a branch circuit unless told. */
  readonly of?: keyof typeof ADVISORY;
  readonly edition: Edition;
}): Worked {
  return worked({
    id: given.id,
    label: given.label,
    value: decimal(given.drop.value).div(given.volts).times(100).toSignificantDigits(12).toFixed(),
    unit: "%",
    expression: `${print(given.drop.value, 3)} V / ${print(given.volts)} V × 100`,
    inputs: [given.drop.id],
    citations: [cite(ADVISORY[given.of ?? "branch"], given.edition)!],
    edition: given.edition,
  });
}

/** Longest one-way run in whole feet (rounded down) at which each size keeps the drop within a per cent of a voltage. */
export function longestRuns(given: {
  readonly current: Numeric;
  readonly volts: Numeric;
  readonly limitPercent: Numeric;
  readonly material: Material;
  readonly method: DropMethod;
  readonly celsius?: Numeric;
  readonly edition: Edition;
  readonly sizes: readonly Size[];
}): readonly { size: Size; feet: string }[] {
  const allowed = decimal(given.volts).times(given.limitPercent).div(100);
  return given.sizes.map((size) => {
    const ohms = ohmsPerFoot(resistanceCell(size, given.material, given), given.material, given);
    return { size, feet: allowed.div(ohms.times(given.current).times(2)).floor().toFixed() };
  });
}

/** The smallest size whose circular mils reach 2·K·I·L / allowed volts; null when none does. */
export function sizeForDrop(given: {
  readonly current: Numeric;
  readonly feet: Numeric;
  readonly allowedVolts: Numeric;
  readonly material: Material;
  readonly edition: Edition;
}): { readonly cmil: string; readonly size: Size | null } {
  const cmil = decimal(2).times(K[given.material]).times(given.current).times(given.feet).div(given.allowedVolts);
  const size = SIZES.find((candidate) => cmil.lte(readCell(CONDUCTOR, candidate, "cmil", given.edition)?.value ?? 0)) ?? null;
  return { cmil: cmil.toFixed(2), size };
}
