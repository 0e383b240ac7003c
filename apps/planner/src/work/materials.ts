import { materialsCsv, materialsList, priceMaterials, readPriceBook } from "@branchwork/engine";
import { loaded } from "./loaded.js";
import type { Given, MaterialsAnswer } from "./protocol.js";

/** The shopping list, priced where a price book is given. */
export function materials(given: Given & { readonly prices: string | null }): MaterialsAnswer {
  const made = loaded(given);
  if (!made.ok) return made;
  const { rows } = materialsList({ design: made.design });
  if (given.prices === null) return { ok: true, csv: materialsCsv(rows), cost: null };
  const read = readPriceBook(given.prices);
  if (!read.ok) return { ok: false, issues: read.issues.map((issue) => ({ ...issue, of: "prices" })) };
  const priced = priceMaterials({ rows, book: read.book });
  const { currency, date, source, total, unpriced } = priced;
  return { ok: true, csv: materialsCsv(priced.rows), cost: { currency, date, source, ...total, unpriced } };
}
