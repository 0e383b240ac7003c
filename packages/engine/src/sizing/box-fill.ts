import { cite } from "../basis/citation.js";
import { type Edition, everyEdition } from "../basis/edition.js";
import { Decimal, decimal, print } from "../quantity.js";
import { BOX_ALLOWANCE } from "../tables/box-allowance.js";
import { readCell } from "../tables/code-table.js";
import { compareSizes, printSize, type Size } from "../tables/size.js";
import { type Cell, type Worked, worked } from "../worked.js";

const FILL = { sections: everyEdition("314.16(B)"), standing: "published" } as const;

/** Allowances for equipment grounds: one for all in 2017; one for the first four and a quarter for each above from 2020. 314.16(B)(5). */
const GROUNDS: Readonly<Record<Edition, (count: number) => Decimal>> = {
  "2017": (count) => decimal(count > 0 ? 1 : 0),
  "2020": quarterAboveFour,
  "2023": quarterAboveFour,
  "2026": quarterAboveFour,
};

function quarterAboveFour(count: number): Decimal {
  return count === 0
    ? decimal(0)
    : decimal(Math.max(0, count - 4))
        .div(4)
        .plus(1);
}

export interface BoxContents {
  readonly conductors: readonly { readonly size: Size; readonly count: number }[];
  readonly grounds: { readonly size: Size; readonly count: number };
  /** Gangs of each device with the largest conductor on it: 1 up to 2 in wide, 2 for a wider one. */
  readonly devices: readonly { readonly size: Size; readonly gangs: number }[];
  readonly internalClamps: boolean;
  /** Studs and hickeys: one allowance of the largest conductor for each kind. */
  readonly fittingKinds?: number;
}

/**
 * Least box volume in in³ by 314.16(B). Returns null when any conductor is larger than 6 AWG: then 314.28 sizes the box by
 * its dimensions instead.
 */
export function boxVolume(given: { readonly id: string; readonly contents: BoxContents; readonly edition: Edition }): Worked | null {
  const { contents, edition } = given;
  const allowance = (size: Size): Cell | null => readCell(BOX_ALLOWANCE, size, "volume", edition);
  const terms: { amount: Decimal; size: Size; what: string }[] = contents.conductors
    .filter((c) => c.count > 0)
    .map((c) => ({ amount: decimal(c.count), size: c.size, what: "conductors" }));
  const inBox = [...contents.conductors.filter((c) => c.count > 0).map((c) => c.size), ...(contents.grounds.count > 0 ? [contents.grounds.size] : [])];
  const largest = inBox.reduce<Size | null>((a, b) => (a === null || compareSizes(b, a) > 0 ? b : a), null);
  if (largest === null) return null;
  if (contents.internalClamps) terms.push({ amount: decimal(1), size: largest, what: "clamps" });
  if (contents.fittingKinds) terms.push({ amount: decimal(contents.fittingKinds), size: largest, what: "fittings" });
  for (const device of contents.devices) terms.push({ amount: decimal(2).times(device.gangs), size: device.size, what: "device" });
  if (contents.grounds.count > 0) terms.push({ amount: GROUNDS[edition](contents.grounds.count), size: contents.grounds.size, what: "grounds" });
  const priced = terms.map((term) => ({ term, cell: allowance(term.size) }));
  if (priced.some(({ cell }) => cell === null)) return null;
  const total = priced.reduce((sum, { term, cell }) => sum.plus(term.amount.times(cell!.value)), new Decimal(0));
  return worked({
    id: given.id,
    label: "Box volume required",
    value: total.toFixed(),
    unit: "in3",
    expression: priced.map(({ term, cell }) => `${print(term.amount)} × ${cell!.value} in³ (${term.what}, ${printSize(term.size)})`).join(" + "),
    cells: priced.map(({ cell }) => cell!),
    citations: [cite(FILL, edition)!],
    edition,
  });
}
