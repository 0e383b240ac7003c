import { cite } from "../basis/citation.js";
import type { Edition } from "../basis/edition.js";
import { decimal, type Numeric, print } from "../quantity.js";
import { AMPACITY } from "../tables/ampacity.js";
import { readCell } from "../tables/code-table.js";
import { SIZES, type Size } from "../tables/size.js";
import { type Worked, worked } from "../worked.js";
import type { Material } from "./ampacity.js";

const RULE = { sections: { "2017": "310.15(B)(7)", "2020": "310.12", "2023": "310.12", "2026": "310.12" }, standing: "published" } as const;

/**
 * Least conductor for a one-family dwelling's service or its main feeder: 83 % of the rating (A) by the 75 °C column, where no
 * correction or adjustment applies. Null when no size in the table serves. Never for a branch circuit or a part of the load.
 */
export function dwellingServiceConductor(given: { readonly id: string; readonly rating: Numeric; readonly material: Material; readonly edition: Edition }): {
  readonly needed: Worked;
  readonly size: Size | null;
} {
  const value = decimal(given.rating).times("0.83");
  const column = given.material === "copper" ? "cu75" : "al75";
  const size = SIZES.find((candidate) => value.lte(readCell(AMPACITY, candidate, column, given.edition)?.value ?? 0)) ?? null;
  const needed = worked({
    id: given.id,
    label: "Ampacity needed, 83 % of the rating",
    value: value.toFixed(),
    unit: "A",
    expression: `${print(given.rating)} A × 0.83`,
    citations: [cite(RULE, given.edition)!],
    edition: given.edition,
  });
  return { needed, size };
}
