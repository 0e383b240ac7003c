import { cite } from "../basis/citation.js";
import { type Edition, everyEdition } from "../basis/edition.js";
import { type Decimal, decimal, print } from "../quantity.js";
import { readCell, rowUpTo } from "../tables/code-table.js";
import { CONDUCTOR } from "../tables/conductor.js";
import { GROUNDING_CONDUCTOR } from "../tables/grounding.js";
import { compareSizes, printSize, SIZES, type Size } from "../tables/size.js";
import { type Worked, worked } from "../worked.js";
import type { Material } from "./ampacity.js";

const NOT_LARGER = { sections: everyEdition("250.122(A)"), standing: "memory" } as const;
const PROPORTION = { sections: everyEdition("250.122(B)"), standing: "published" } as const;

function cmil(size: Size, edition: Edition) {
  const cell = readCell(CONDUCTOR, size, "cmil", edition);
  if (cell === null) throw new RangeError(`no circular mils for ${printSize(size)}`);
  return cell;
}

export interface GroundingSize {
  readonly size: Size;
  readonly worked: Worked;
  readonly leastCmil: string;
}

/**
 * Least equipment grounding conductor for an overcurrent rating (A), raised in proportion of circular mils when the
 * ungrounded conductors in use are larger than the least size that serves. Table 250.122, 250.122(B). Throws RangeError above 1200 A.
 */
export function groundingConductor(given: {
  readonly id: string;
  readonly overcurrent: number;
  readonly material: Material;
  readonly leastSize: Size;
  readonly usedSize: Size;
  readonly edition: Edition;
}): GroundingSize {
  const { id, edition, leastSize, usedSize, material } = given;
  const row = rowUpTo(GROUNDING_CONDUCTOR, given.overcurrent);
  const base = row === null ? null : readCell(GROUNDING_CONDUCTOR, row, material, edition);
  if (base === null) throw new RangeError(`no equipment grounding conductor for ${given.overcurrent} A`);
  const baseSize = base.value as Size;
  if (compareSizes(usedSize, leastSize) <= 0) {
    // Behind the large device of a motor, a welder or an air conditioner the table asks more than the circuit conductors: 250.122(A) does not.
    const over = compareSizes(baseSize, usedSize) > 0;
    const size = over ? usedSize : baseSize;
    const plain = worked({
      id,
      label: "Equipment grounding conductor",
      value: size,
      unit: "AWG/kcmil",
      expression: `by ${given.overcurrent} A overcurrent device${over ? `: ${printSize(baseSize)}, but not over the circuit conductors, ${printSize(usedSize)}` : ""}`,
      cells: [base],
      citations: over ? [cite(NOT_LARGER, edition)!] : [],
      edition,
    });
    return { size, worked: plain, leastCmil: cmil(size, edition).value };
  }
  const [baseCmil, usedCmil, leastCmil] = [cmil(baseSize, edition), cmil(usedSize, edition), cmil(leastSize, edition)];
  const needed = decimal(baseCmil.value).times(usedCmil.value).div(leastCmil.value);
  const size = SIZES.find((candidate) => needed.lte(cmil(candidate, edition).value)) ?? usedSize;
  // An equipment grounding conductor never needs to exceed the ungrounded conductors, 250.122(A).
  const capped = compareSizes(size, usedSize) > 0 ? usedSize : size;
  const shown = worked({
    id,
    label: "Equipment grounding conductor, raised in proportion",
    value: capped,
    unit: "AWG/kcmil",
    expression: `${print(baseCmil.value)} cmil × ${print(usedCmil.value)} / ${print(leastCmil.value)} = ${print(needed, 1)} cmil, so ${printSize(capped)}`,
    cells: [base, baseCmil, usedCmil, leastCmil],
    citations: [cite(PROPORTION, edition)!],
    rounding: "up to the next size",
    edition,
  });
  return { size: capped, worked: shown, leastCmil: needed.toFixed() };
}

/** How far a size falls short of needed circular mils, in per cent (0 when it does not). Near-edge cases are told by this. */
export function shortOfCmil(size: Size, needed: string, edition: Edition): Decimal {
  const short = decimal(needed).minus(cmil(size, edition).value).div(needed).times(100);
  return short.isNegative() ? decimal(0) : short;
}
