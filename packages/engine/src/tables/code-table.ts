import type { Citation, Standing } from "../basis/citation.js";
import type { Edition, PerEdition } from "../basis/edition.js";
import type { Cell } from "../worked.js";

export interface SourceRecord {
  readonly where: string;
  readonly confirms: string;
}

/** How well the cells of some rows (all, when omitted) are known. The first group that names a row wins. */
export interface CellGroup {
  readonly rows?: readonly string[];
  readonly columns?: readonly string[];
  readonly standing: Standing;
}

/** A code table laid out like the printed page: one array a row, in the order of `columns`; null is a blank on the page. */
export interface CodeTable<Column extends string = string> {
  readonly id: string;
  readonly title: string;
  readonly sections: PerEdition<string>;
  readonly columns: readonly Column[];
  readonly rows: Readonly<Record<string, readonly (string | null)[]>>;
  readonly groups: readonly CellGroup[];
  readonly sources: readonly SourceRecord[];
  readonly notes?: readonly string[];
}

/** Reads one cell with its citation; null where the page is blank or has no such row. A column that is not of the table is a bug. */
export function readCell<Column extends string>(table: CodeTable<Column>, row: string, column: Column, edition: Edition): Cell | null {
  const known = (READ.get(table) ?? remember(table))[edition];
  const before = known.get(row)?.get(column);
  if (before !== undefined) return before;
  const at = table.columns.indexOf(column);
  if (at < 0) throw new RangeError(`${table.id} has no column ${column}`);
  // Only what the table has is kept: rows that it lacks are without end.
  const value = Object.hasOwn(table.rows, row) ? (table.rows[row]?.[at] ?? null) : null;
  if (value === null) return null;
  const citation = Object.freeze(citeTable(table, row, column, edition));
  const cell = Object.freeze({ table: table.id, row, column, value, citation });
  const ofRow = known.get(row);
  if (ofRow === undefined) known.set(row, new Map([[column, cell]]));
  else ofRow.set(column, cell);
  return cell;
}

/** Cells read before, of each table: tables never change, and the same few cells are read for every size tried. */
type Remembered = PerEdition<Map<string, Map<string, Cell>>>;
const READ = new WeakMap<CodeTable, Remembered>();
function remember(table: CodeTable): Remembered {
  const known: Remembered = { "2017": new Map(), "2020": new Map(), "2023": new Map(), "2026": new Map() };
  READ.set(table, known);
  return known;
}

/** Of rows named by a number, the least that is at or above a value: for bands named by their top. */
export function rowUpTo(table: CodeTable, value: number): string | null {
  return numericRows(table).find((row) => value <= Number(row)) ?? null;
}

/** Of rows named by a number, the greatest that is at or below a value: for bands named by their bottom. */
export function rowFrom(table: CodeTable, value: number): string | null {
  return numericRows(table).findLast((row) => value >= Number(row)) ?? null;
}

const NUMERIC_ROWS = new WeakMap<CodeTable, readonly string[]>();
function numericRows(table: CodeTable): readonly string[] {
  const known = NUMERIC_ROWS.get(table);
  if (known !== undefined) return known;
  const rows = Object.keys(table.rows).sort((a, b) => Number(a) - Number(b));
  NUMERIC_ROWS.set(table, rows);
  return rows;
}

function citeTable(table: CodeTable, row: string, column: string, edition: Edition): Citation {
  const group = table.groups.find((g) => (g.rows?.includes(row) ?? true) && (g.columns?.includes(column) ?? true));
  if (!group) throw new RangeError(`${table.id} says nothing of how row ${row} is known`);
  return { document: "NFPA 70", section: table.sections[edition], edition, standing: group.standing };
}
