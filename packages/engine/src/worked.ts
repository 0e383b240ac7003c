import type { Citation } from "./basis/citation.js";
import type { Edition } from "./basis/edition.js";
import type { Unit } from "./quantity.js";

/** One cell read from a code table, with where it stands and how well it is known. */
export interface Cell {
  readonly table: string;
  readonly row: string;
  readonly column: string;
  readonly value: string;
  readonly citation: Citation;
}

/**
 * A value and the road to it. `expression` has the numbers in it, so a reviewer can redo it with a pencil;
 * `value` is a numeral (or a size such as "6"), never a float.
 */
export interface Worked {
  readonly id: string;
  readonly label: string;
  readonly value: string;
  readonly unit: Unit;
  readonly expression: string;
  readonly inputs: readonly string[];
  readonly cells: readonly Cell[];
  readonly rounding: string | null;
  readonly citations: readonly Citation[];
  readonly edition: Edition | null;
}

export type WorkedParts = Pick<Worked, "id" | "label" | "value" | "unit" | "expression"> & Partial<Worked>;

/** Fills the optional parts of a worked value and gathers the citations of its cells. */
export function worked(parts: WorkedParts): Worked {
  // Written out field by field: a design makes thousands, and a spread of parts of many shapes is slow.
  const { id, label, value, unit, expression, inputs = [], rounding = null, edition = null, cells = [] } = parts;
  const unique: Citation[] = [];
  const add = (c: Citation) => {
    if (!unique.some((u) => u === c || (u.section === c.section && u.document === c.document && u.edition === c.edition))) unique.push(c);
  };
  for (const citation of parts.citations ?? []) add(citation);
  for (const cell of cells) add(cell.citation);
  return { id, label, value, unit, expression, inputs, cells, rounding, citations: unique, edition };
}
