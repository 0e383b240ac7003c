import type { Citation } from "../basis/citation.js";
import type { Edition } from "../basis/edition.js";
import { Decimal, decimal, type Numeric, print } from "../quantity.js";
import { readCell } from "../tables/code-table.js";
import { PVC_SUPPORT, SUPPORT, SUPPORT_SECTIONS, THREADED_SUPPORT } from "../tables/support.js";
import type { AnyTradeSize } from "../tables/trade-size.js";
import { type Cell, type Worked, worked } from "../worked.js";

export type SupportedMethod = keyof typeof SUPPORT.rows;

export interface SupportSpacing {
  /** From a box, cabinet, conduit body or other end to the first fastening, ft. */
  readonly within: Worked;
  /** Between supports, ft. */
  readonly apart: Worked;
}

/** How near to an end and how far apart a raceway or cable is fastened; null where the tables do not list the size. */
export function supportSpacing(given: {
  readonly id: string;
  readonly method: SupportedMethod;
  readonly tradeSize?: AnyTradeSize;
  /** RMC or IMC, straight and horizontal, threaded couplings. */
  readonly threadedStraight?: boolean;
  readonly edition: Edition;
}): SupportSpacing | null {
  const { id, method, edition } = given;
  const within = inArticle(readCell(SUPPORT, method, "within", edition), method, edition);
  const apart = spacingCell(given);
  if (within === null || apart === null) return null;
  const line = (part: string, label: string, cell: Cell) =>
    worked({ id: `${id}.${part}`, label, value: cell.value, unit: "ft", expression: `${cell.value} ft`, cells: [cell], edition });
  return { within: line("within", `${method}: fastened within, from each end`, within), apart: line("apart", `${method}: between supports, at most`, apart) };
}

function spacingCell(given: Parameters<typeof supportSpacing>[0]): Cell | null {
  const { method, tradeSize, edition } = given;
  if (method === "PVC-40" || method === "PVC-80") return tradeSize === undefined ? null : readCell(PVC_SUPPORT, tradeSize, "apart", edition);
  const threaded = given.threadedStraight === true && tradeSize !== undefined && (method === "RMC" || method === "IMC");
  if (threaded) return readCell(THREADED_SUPPORT, tradeSize, "apart", edition);
  return inArticle(readCell(SUPPORT, method, "apart", edition), method, edition);
}

function inArticle(cell: Cell | null, method: SupportedMethod, edition: Edition): Cell | null {
  if (cell === null) return null;
  const citation: Citation = { ...cell.citation, section: SUPPORT_SECTIONS[method][edition] };
  return { ...cell, citation };
}

/** Least number of supports on a straight run that ends at a box or fitting on both sides; one serves a run no longer than twice the end distance. */
export function supportCount(given: { readonly id: string; readonly spacing: SupportSpacing; readonly feet: Numeric }): Worked {
  const { within, apart } = given.spacing;
  const between = Decimal.max(0, decimal(given.feet).minus(decimal(within.value).times(2)));
  return worked({
    id: given.id,
    label: "Supports, at least",
    value: between.div(apart.value).ceil().plus(1).toFixed(),
    unit: "count",
    expression: `max(0, ${print(given.feet)} ft - 2 × ${within.value} ft) / ${apart.value} ft, rounded up, and one`,
    inputs: [within.id, apart.id],
    citations: [...within.citations, ...apart.citations],
    edition: within.edition,
  });
}
