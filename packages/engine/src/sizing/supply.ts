import type { Edition } from "../basis/edition.js";
import { type Decimal, decimal, print } from "../quantity.js";
import { type CodeTable, readCell } from "../tables/code-table.js";
import { CONDUCTOR } from "../tables/conductor.js";
import { printSize, type Size } from "../tables/size.js";
import type { Cell, Worked } from "../worked.js";
import type { Material } from "./ampacity.js";

/** Ungrounded conductors of one phase: a size and how many in parallel. */
export interface Supply {
  readonly size: Size;
  readonly material: Material;
  readonly sets: number;
}

export interface SizedConductor {
  readonly size: Size;
  readonly worked: Worked;
}

export function circularMils(size: Size, edition: Edition): Cell {
  const cell = readCell(CONDUCTOR, size, "cmil", edition);
  if (cell === null) throw new RangeError(`no circular mils for ${printSize(size)}`);
  return cell;
}

export function supplyArea({ size, sets }: Supply, edition: Edition): { total: Decimal; cell: Cell; shown: string } {
  const cell = circularMils(size, edition);
  return { total: decimal(cell.value).times(sets), cell, shown: `${print(cell.value)} cmil${sets > 1 ? ` × ${sets}` : ""}` };
}

/** The row of a table by supply area: its top is inclusive, and the last row has none. */
export function supplyRow(table: CodeTable, supply: Supply, total: Decimal, edition: Edition): string {
  const rows = Object.keys(table.rows).filter((row) => row.startsWith(supply.material));
  const found = rows.find((row) => total.lte(readCell(table, row, "upTo", edition)?.value ?? total));
  if (found === undefined) throw new RangeError(`${table.id} has no row for ${supply.material}`);
  return found;
}
