import { cite, citeOther } from "../basis/citation.js";
import { type Edition, everyEdition } from "../basis/edition.js";
import { decimal, print } from "../quantity.js";
import { readCell } from "../tables/code-table.js";
import { RACEWAY } from "../tables/raceway.js";
import type { Size } from "../tables/size.js";
import type { AnyTradeSize } from "../tables/trade-size.js";
import { type Worked, worked } from "../worked.js";
import { conductorCell } from "./raceway-fill.js";

const NOTE = { sections: everyEdition("Chapter 9 Table 1, informational note on jamming"), standing: "published" } as const;
/** A bend leaves a raceway oval, so makers of cable reckon with 5 % more bore. */
const OVAL = citeOther("Cable makers' practice", "5 % for the oval bore of a bend", "memory");

export interface JamRatio {
  /** Bore over conductor in a straight raceway: the ratio of the code's note. */
  readonly straight: Worked;
  /** The same with the 1.05 of a bend. */
  readonly bent: Worked;
  /** likely: three conductors and either ratio from 2.8 to 3.2. unlikely: four or more in that band. none: outside it, or fewer than three. */
  readonly jam: "likely" | "unlikely" | "none";
  /** Conductors of the one size: under three nothing wedges, whatever the ratio. */
  readonly count: number;
}

/**
 * Whether like conductors can wedge side by side in a raceway. `count` is how many there are of the largest size; smaller ones
 * beside them are left out. Null when the tables as entered lack the raceway or the conductor. Advice, not a limit.
 */
export function jamRatio(given: {
  readonly id: string;
  readonly raceway: string;
  readonly tradeSize: AnyTradeSize;
  readonly conductor: { readonly size: Size; readonly insulation: string; readonly count: number; readonly compact?: boolean };
  readonly edition: Edition;
}): JamRatio | null {
  const { id, conductor, edition } = given;
  const bore = readCell(RACEWAY, `${given.raceway} ${given.tradeSize}`, "inside", edition);
  const outside = conductorCell(conductor, "diameter", edition);
  if (bore === null || outside === null) return null;
  const ratio = decimal(bore.value).div(outside.value);
  const cells = [bore, outside];
  const straight = worked({
    id: `${id}.straight`,
    label: "Bore over conductor, straight",
    value: ratio.toSignificantDigits(8).toFixed(),
    unit: "factor",
    expression: `${bore.value} in / ${outside.value} in`,
    cells,
    citations: [cite(NOTE, edition)!],
    edition,
  });
  const bent = worked({
    id: `${id}.bent`,
    label: "Bore over conductor, in a bend",
    value: ratio.times("1.05").toSignificantDigits(8).toFixed(),
    unit: "factor",
    expression: `1.05 × ${print(bore.value, 3)} in / ${outside.value} in`,
    cells,
    citations: [OVAL, cite(NOTE, edition)!],
    edition,
  });
  const inBand = [straight, bent].some(({ value }) => decimal(value).gte("2.8") && decimal(value).lte("3.2"));
  return { straight, bent, jam: !inBand || conductor.count < 3 ? "none" : conductor.count === 3 ? "likely" : "unlikely", count: conductor.count };
}
