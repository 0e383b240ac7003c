import { cite } from "../basis/citation.js";
import { type Edition, everyEdition } from "../basis/edition.js";
import { Decimal, decimal, type Numeric, print } from "../quantity.js";
import { type CodeTable, readCell } from "../tables/code-table.js";
import { COMPACT_CONDUCTOR, COMPACT_ROWS } from "../tables/compact-conductor.js";
import { INSULATED_CONDUCTOR, INSULATION_ROWS } from "../tables/insulated.js";
import type { Size } from "../tables/size.js";
import { type Cell, type Worked, worked } from "../worked.js";

const CABLE_NOTE = { sections: everyEdition("Chapter 9 Notes 5 and 9"), standing: "published" } as const;
const QUARTER_PI = Decimal.acos(-1).div(4);

export interface CableInRaceway {
  readonly name: string;
  /** Diameter of a round cable, the wider dimension of a flat one, in. Measured or from its maker. */
  readonly majorIn: Numeric;
  readonly count: number;
}

export interface MixedConductor {
  readonly size: Size;
  readonly insulation: string;
  readonly count: number;
  /** Compact-stranded: Table 5A instead of Table 5. */
  readonly compact?: boolean;
}

/**
 * Area that cables and single conductors take up together, in², and how many conductors they count as. A multiconductor cable is one
 * conductor; a flat one is a circle on its wider dimension. Null when the tables as entered lack a conductor, or a compact one.
 */
export function mixedArea(given: {
  readonly id: string;
  readonly cables: readonly CableInRaceway[];
  readonly conductors: readonly MixedConductor[];
  readonly edition: Edition;
}): { readonly area: Worked; readonly count: number } | null {
  const { edition } = given;
  const cables = given.cables.filter((c) => c.count > 0);
  const conductors = given.conductors.filter((c) => c.count > 0);
  const cells = conductors.map((conductor) => areaCell(conductor, edition));
  if (!allRead(cells)) return null;
  let total = new Decimal(0);
  for (const { majorIn, count } of cables) total = total.plus(QUARTER_PI.times(decimal(majorIn).pow(2)).times(count));
  for (const [i, { count }] of conductors.entries()) total = total.plus(decimal(cells[i]!.value).times(count));
  const terms = [
    ...cables.map((c) => `${c.count} × 0.7854 × ${print(c.majorIn, 4)} in × ${print(c.majorIn, 4)} in`),
    ...conductors.map((c, i) => `${c.count} × ${cells[i]!.value} in²`),
  ];
  const area = worked({
    id: given.id,
    label: "Area of cables and conductors in the raceway",
    value: total.toSignificantDigits(10).toFixed(),
    unit: "in2",
    expression: terms.join(" + ") || "0 in²",
    cells,
    citations: cables.length > 0 ? [cite(CABLE_NOTE, edition)!] : [],
    edition,
  });
  return { area, count: [...cables, ...conductors].reduce((sum, { count }) => sum + count, 0) };
}

const allRead = (cells: readonly (Cell | null)[]): cells is readonly Cell[] => cells.every((cell) => cell !== null);

function areaCell({ size, insulation, compact }: MixedConductor, edition: Edition): Cell | null {
  const table: CodeTable = compact ? COMPACT_CONDUCTOR : INSULATED_CONDUCTOR;
  const row = compact ? COMPACT_ROWS[insulation] : INSULATION_ROWS[insulation];
  return row === undefined ? null : readCell(table, `${row} ${size}`, "area", edition);
}
