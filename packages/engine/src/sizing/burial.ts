import type { Basis } from "../basis/basis.js";
import { cite, citeOther } from "../basis/citation.js";
import { everyEdition } from "../basis/edition.js";
import { decimal, type Numeric, print } from "../quantity.js";
import { BURIAL_COVER } from "../tables/burial.js";
import { readCell } from "../tables/code-table.js";
import { type Cell, type Worked, worked } from "../worked.js";

export type BurialPlace = "general" | "under-concrete-2in" | "under-building" | "under-slab-4in" | "under-street" | "under-dwelling-driveway";
const RULE = { sections: everyEdition("300.5(A)"), standing: "published" } as const;

/** Least cover in inches from the top of the raceway or cable to grade, by wiring method and place, raised by the jurisdiction where it asks more. */
export function leastCover(given: {
  readonly id: string;
  readonly method: string;
  readonly place: BurialPlace;
  readonly basis: Basis;
  /** A residential branch circuit of 120 V and 20 A or less, GFCI protected: column 4 of the table where it asks less. */
  readonly small120V?: boolean;
}): Worked {
  const { basis, place, method } = given;
  const byMethod = method === "UF-B" ? "directBurial" : method === "RMC" || method === "IMC" ? "rmcImc" : "nonmetallicRaceway";
  const cell = least(
    [byMethod, ...(given.small120V ? (["residential120V20AGfci"] as const) : [])].map((column) => readCell(BURIAL_COVER, place, column, basis.edition)),
  );
  if (cell === null) throw new RangeError(`no cover for ${place}`);
  const local = basis.leastCover[place];
  const raised = local !== undefined && decimal(local.inches).gt(cell.value);
  return worked({
    id: given.id,
    label: `Least cover, ${method}, ${place.replaceAll("-", " ")}`,
    value: raised ? String(local.inches) : cell.value,
    unit: "in",
    expression: raised ? `${local.inches} in by the jurisdiction, in place of ${cell.value} in` : `${cell.value} in`,
    cells: [cell],
    citations: raised ? [citeOther("Local amendment", local.citation, "one-source")] : [cite(RULE, basis.edition)!],
    edition: basis.edition,
  });
}

const least = (cells: readonly (Cell | null)[]) => cells.reduce((a, b) => (a !== null && b !== null && decimal(b.value).lt(a.value) ? b : a));

/** Depth of trench in inches: cover, the outside diameter of what lies in it, and bedding below. Cover is measured to the top, 300.5. */
export function trenchDepth(given: { readonly id: string; readonly cover: Worked; readonly outsideIn: Numeric; readonly beddingIn: Numeric }): Worked {
  const depth = decimal(given.cover.value).plus(given.outsideIn).plus(given.beddingIn);
  return worked({
    id: given.id,
    label: "Depth of trench",
    value: depth.toFixed(),
    unit: "in",
    expression: `${print(given.cover.value)} in + ${print(given.outsideIn, 3)} in + ${print(given.beddingIn)} in`,
    inputs: [given.cover.id],
    edition: given.cover.edition,
  });
}
