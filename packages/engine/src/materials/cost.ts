import { type Decimal, decimal, type Numeric } from "../quantity.js";
import type { MaterialRow } from "./materials-list.js";
import type { Price, PriceBook } from "./price-book.js";

/** A cost is a range: what it may be at least, what is likely, and at most. Numerals with two places, in the book's currency. */
export interface CostRange {
  readonly low: string;
  readonly likely: string;
  readonly high: string;
}

export interface PricedRow extends MaterialRow {
  /** null where the book has no price for it in its unit. */
  readonly cost: CostRange | null;
  /** Why there is no cost; null where there is one. */
  readonly unpriced: string | null;
}

export interface PricedList {
  readonly currency: string;
  readonly date: string;
  readonly source: string;
  readonly rows: readonly PricedRow[];
  /** Sum of the priced rows alone. */
  readonly total: CostRange;
  /** Rows without a price: the total leaves them out. */
  readonly unpriced: readonly string[];
}

/** The price of an item in the unit it is counted in, or why there is none. */
export function priceOf(book: PriceBook, key: string, unit: "ft" | "each"): { readonly price: Price } | { readonly why: string } {
  const price = Object.hasOwn(book.items, key) ? book.items[key] : undefined;
  if (price === undefined) return { why: "not in the price book" };
  return price.unit === unit ? { price } : { why: `priced by the ${price.unit}, counted by the ${unit}` };
}

const SIDES = ["low", "likely", "high"] as const;
const range = (of: (side: (typeof SIDES)[number]) => Decimal): CostRange => ({
  low: of("low").toFixed(2),
  likely: of("likely").toFixed(2),
  high: of("high").toFixed(2),
});

/** What a quantity costs at a price, rounded to the cent. */
export function costAt(price: Price, quantity: Numeric): CostRange {
  return range((side) => decimal(price[side]).times(quantity));
}

/** Sum of ranges. */
export function totalCost(costs: readonly CostRange[]): CostRange {
  return range((side) => costs.reduce((sum, cost) => sum.plus(cost[side]), decimal(0)));
}

/** A materials list with its cost: a missing price leaves a row unpriced, named in the result, never counted as nothing. */
export function priceMaterials(given: { readonly rows: readonly MaterialRow[]; readonly book: PriceBook }): PricedList {
  const { book } = given;
  const rows = given.rows.map((row): PricedRow => {
    const found = priceOf(book, row.key, row.unit);
    return "price" in found ? { ...row, cost: costAt(found.price, row.quantity.value), unpriced: null } : { ...row, cost: null, unpriced: found.why };
  });
  return {
    currency: book.currency,
    date: book.date,
    source: book.source,
    rows,
    total: totalCost(rows.flatMap((row) => (row.cost === null ? [] : [row.cost]))),
    unpriced: rows.filter((row) => row.cost === null).map((row) => row.item),
  };
}
