import type { Edition } from "../basis/edition.js";
import { BENDING_SPACE_OPPOSITE, BENDING_SPACE_SIDE } from "../tables/bending-space.js";
import { readCell } from "../tables/code-table.js";
import { printSize, type Size } from "../tables/size.js";
import { type Worked, worked } from "../worked.js";

/**
 * Least room from a terminal to the wall its conductor faces, in. `opposite`: the conductor goes through that wall. Null: 14 to 10 AWG,
 * for which the code names no figure, more wires a terminal than the tables as entered, or a size beyond them. 312.6(B).
 */
export function bendingSpace(given: {
  readonly id: string;
  readonly size: Size;
  readonly wiresPerTerminal: 1 | 2;
  readonly opposite: boolean;
  readonly edition: Edition;
}): Worked | null {
  const column = given.wiresPerTerminal === 1 ? "one" : "two";
  const cell = given.opposite
    ? readCell(BENDING_SPACE_OPPOSITE, given.size, column, given.edition)
    : readCell(BENDING_SPACE_SIDE, given.size, column, given.edition);
  if (cell === null) return null;
  return worked({
    id: given.id,
    label: `Wire-bending space for ${printSize(given.size)}, ${given.opposite ? "through the wall it faces" : "turning before the wall it faces"}`,
    value: cell.value,
    unit: "in",
    expression: `${cell.value} in`,
    cells: [cell],
    edition: given.edition,
  });
}
