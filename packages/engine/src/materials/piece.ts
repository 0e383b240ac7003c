import { type Citation, citeOther } from "../basis/citation.js";
import { decimal, type Numeric } from "../quantity.js";

/** Something to buy for one place of the job, before pieces alike are gathered into a row. */
export interface Piece {
  /** Name in the price book. */
  readonly key: string;
  readonly item: string;
  readonly unit: "ft" | "each";
  /** Exact, before rounding to how it is sold. */
  readonly quantity: string;
  /** Redoable by pencil. */
  readonly expression: string;
  /** Id of the run, segment or panel it is for. */
  readonly from: string;
  /** How lengths are rounded when bought. */
  readonly sold: "foot" | "stick" | "each";
  readonly citations: readonly Citation[];
  readonly note: string | null;
}

const PRACTICE = citeOther("Common practice", "materials", "practice");

/** A count of things bought one by one; null when there are none. */
export function each(
  key: string,
  item: string,
  count: number,
  from: string,
  more: { readonly note?: string; readonly expression?: string; readonly citations?: readonly Citation[] } = {},
): Piece | null {
  if (count === 0) return null;
  return {
    key,
    item,
    unit: "each",
    quantity: String(count),
    expression: more.expression ?? String(count),
    from,
    sold: "each",
    citations: more.citations ?? [PRACTICE],
    note: more.note ?? null,
  };
}

/** A length; null when it is nothing. */
export function feet(
  key: string,
  item: string,
  quantity: Numeric,
  expression: string,
  from: string,
  more: { readonly sold?: "foot" | "stick"; readonly note?: string; readonly citations?: readonly Citation[] } = {},
): Piece | null {
  const exact = decimal(quantity);
  if (exact.isZero()) return null;
  return {
    key,
    item,
    unit: "ft",
    quantity: exact.toFixed(),
    expression,
    from,
    sold: more.sold ?? "foot",
    citations: more.citations ?? [PRACTICE],
    note: more.note ?? null,
  };
}

export const some = <T>(pieces: readonly (T | null)[]): readonly T[] => pieces.filter((piece): piece is T & {} => piece !== null);
