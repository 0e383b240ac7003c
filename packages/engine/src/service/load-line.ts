import { cite, type Standing } from "../basis/citation.js";
import type { Edition, PerEdition } from "../basis/edition.js";
import type { Decimal, Unit } from "../quantity.js";
import { type CodeTable, readCell } from "../tables/code-table.js";
import { type Cell, type Worked, worked } from "../worked.js";

/** A rule of the load article whose standing may differ by edition. */
export interface LoadRule {
  readonly sections: PerEdition<string | null>;
  readonly standing: PerEdition<Standing>;
}

/** Lines of a load calculation with what they come to. */
export interface LoadSum {
  readonly total: Worked;
  readonly steps: readonly Worked[];
}

/** A rule known to 2023 with one standing; what 2026 says of it was carried over, so it stands there on memory unless said. */
export function loadRule(sections: PerEdition<string | null>, standing: Standing, in2026: Standing = "memory"): LoadRule {
  return { sections, standing: { "2017": standing, "2020": standing, "2023": standing, "2026": in2026 } };
}

const CARRIED: PerEdition<boolean> = { "2017": false, "2020": false, "2023": false, "2026": true };

/** A cell of a demand table; in an edition whose table was not seen, its figure and number are carried over and stand on memory. */
export function loadCell<Column extends string>(table: CodeTable<Column>, row: string, column: Column, edition: Edition): Cell {
  const cell = readCell(table, row, column, edition);
  if (cell === null) throw new RangeError(`${table.id} has no ${column} in row ${row}`);
  return CARRIED[edition] ? { ...cell, citation: { ...cell.citation, standing: "memory" } } : cell;
}

/** One printed line of a load calculation, in VA unless another unit is said. */
export function loadLine(given: {
  readonly id: string;
  readonly label: string;
  readonly value: Decimal;
  readonly unit?: Unit;
  readonly expression: string;
  readonly inputs?: readonly Worked[];
  readonly rules?: readonly LoadRule[];
  readonly cells?: readonly Cell[];
  readonly rounding?: string;
  readonly edition: Edition;
}): Worked {
  const { edition } = given;
  const citations = (given.rules ?? []).map((rule) => cite({ sections: rule.sections, standing: rule.standing[edition] }, edition)).filter((c) => c !== null);
  return worked({
    id: given.id,
    label: given.label,
    value: given.value.toSignificantDigits(12).toFixed(),
    unit: given.unit ?? "VA",
    expression: given.expression,
    inputs: (given.inputs ?? []).map((line) => line.id),
    cells: given.cells ?? [],
    rounding: given.rounding ?? null,
    citations,
    edition,
  });
}
