import { cite } from "../basis/citation.js";
import { type Edition, everyEdition } from "../basis/edition.js";
import { Decimal, decimal } from "../quantity.js";
import { compareSizes, type Size } from "../tables/size.js";
import { type AnyTradeSize, TRADE_INCHES } from "../tables/trade-size.js";
import { type Worked, worked } from "../worked.js";
import { bendingSpace } from "./bending-space.js";

const STRAIGHT = { sections: everyEdition("314.28(A)(1)"), standing: "published" } as const;
const TURNED = { sections: everyEdition("314.28(A)(2)"), standing: "published" } as const;

type Sizes = readonly [AnyTradeSize, ...AnyTradeSize[]];
const inches = (size: AnyTradeSize): Decimal => decimal(TRADE_INCHES[size]);
const largestOf = (sizes: Sizes): Decimal => sizes.map(inches).reduce((a, b) => Decimal.max(a, b));

/** Whether a box goes by 314.28 and not by volume: any conductor of 4 AWG or larger. */
export const isPullBox = (sizes: readonly Size[]): boolean => sizes.some((size) => compareSizes(size, "4") >= 0);

/** Length of a box for straight pulls, in: eight times the largest raceway. 314.28(A)(1). */
export function straightPull(given: { readonly id: string; readonly tradeSizes: Sizes; readonly edition: Edition }): Worked {
  const largest = largestOf(given.tradeSizes);
  return worked({
    id: given.id,
    label: "Box length, straight pull",
    value: largest.times(8).toFixed(),
    unit: "in",
    expression: `8 × ${largest.toFixed()} in`,
    citations: [cite(STRAIGHT, given.edition)!],
    edition: given.edition,
  });
}

/** From a row of entries to the opposite wall where conductors turn or are spliced, in: six times the largest and the rest of the row. 314.28(A)(2). */
export function anglePull(given: { readonly id: string; readonly row: Sizes; readonly edition: Edition }): Worked {
  const largest = largestOf(given.row);
  const at = given.row.findIndex((size) => inches(size).eq(largest));
  const others = given.row.filter((_, i) => i !== at).map(inches);
  return worked({
    id: given.id,
    label: "Entries to the opposite wall, angle or U pull or splice",
    value: others.reduce((sum, size) => sum.plus(size), largest.times(6)).toFixed(),
    unit: "in",
    expression: [`6 × ${largest.toFixed()} in`, ...others.map((size) => `${size.toFixed()} in`)].join(" + "),
    citations: [cite(TURNED, given.edition)!],
    edition: given.edition,
  });
}

/** Between two entries with the same conductors, edge to edge, in: six times the larger. 314.28(A)(2). */
export function entryDistance(given: { readonly id: string; readonly pair: readonly [AnyTradeSize, AnyTradeSize]; readonly edition: Edition }): Worked {
  const larger = largestOf(given.pair);
  return worked({
    id: given.id,
    label: "Between entries with the same conductors",
    value: larger.times(6).toFixed(),
    unit: "in",
    expression: `6 × ${larger.toFixed()} in`,
    citations: [cite(TURNED, given.edition)!],
    edition: given.edition,
  });
}

/** From an entry in the back to the removable cover, in: one wire a terminal of Table 312.6(A); null where it names no figure. 314.28(A)(2) exception. */
export function backEntryDepth(given: { readonly id: string; readonly largest: Size; readonly edition: Edition }): Worked | null {
  const space = bendingSpace({ id: given.id, size: given.largest, wiresPerTerminal: 1, opposite: false, edition: given.edition });
  if (space === null) return null;
  return { ...space, label: "Back entry to the cover", citations: [cite(TURNED, given.edition)!, ...space.citations] };
}

/** Whether a box smaller than (A)(1) and (A)(2) serves: its marking names at least as many conductors and as large ones. 314.28(A)(3). */
export function markedForFewer(given: {
  readonly marking: { readonly count: number; readonly largest: Size } | null;
  readonly conductors: { readonly count: number; readonly largest: Size };
}): boolean {
  const { marking, conductors } = given;
  return marking !== null && conductors.count <= marking.count && compareSizes(conductors.largest, marking.largest) <= 0;
}
