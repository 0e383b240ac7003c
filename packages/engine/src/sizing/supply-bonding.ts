import { cite } from "../basis/citation.js";
import { type Edition, everyEdition } from "../basis/edition.js";
import { print } from "../quantity.js";
import { readCell } from "../tables/code-table.js";
import { SUPPLY_BONDING } from "../tables/electrode.js";
import { printSize, SIZES, type Size } from "../tables/size.js";
import { worked } from "../worked.js";
import type { Material } from "./ampacity.js";
import { circularMils, type SizedConductor, type Supply, supplyArea, supplyRow } from "./supply.js";

const ABOVE_TABLE = { sections: everyEdition("250.102(C)(1) note 1: 12.5 %"), standing: "published" } as const;

/**
 * Least grounded service conductor, main or system bonding jumper, or supply-side bonding jumper, Table 250.102(C)(1): by the supply's
 * circular mils; above the table 12.5 % of them. For conductors in separate raceways give the supply of one raceway. Null above the
 * table when jumper and supply differ in metal (then by an equal supply of the jumper's metal), or when no size is large enough.
 */
export function supplyBonding(given: {
  readonly id: string;
  readonly label: string;
  readonly supply: Supply;
  readonly material: Material;
  readonly edition: Edition;
}): SizedConductor | null {
  const { supply, material, edition } = given;
  const { total, cell, shown } = supplyArea(supply, edition);
  const found = readCell(SUPPLY_BONDING, supplyRow(SUPPLY_BONDING, supply, total, edition), material, edition);
  if (found === null && material !== supply.material) return null;
  const eighth = total.times("0.125");
  const size = found ? (found.value as Size) : SIZES.find((candidate) => eighth.lte(circularMils(candidate, edition).value));
  if (size === undefined) return null;
  return {
    size,
    worked: worked({
      id: given.id,
      label: given.label,
      value: size,
      unit: "AWG/kcmil",
      expression: `${shown}${found ? "" : " × 0.125"} = ${print(found ? total : eighth)} cmil, so ${printSize(size)}`,
      rounding: found ? null : "up to the next size",
      cells: found ? [found, cell] : [cell],
      citations: found ? [] : [cite(ABOVE_TABLE, edition)!],
      edition,
    }),
  };
}
