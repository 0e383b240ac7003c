import type { PricedRow } from "./cost.js";
import type { MaterialRow } from "./materials-list.js";

/** One field of a CSV: quoted where it must be; what a spreadsheet would run as a formula is made text by a leading apostrophe. */
export function csvField(text: string): string {
  const numeral = /^-?\d+(\.\d+)?$/.test(text);
  const safe = !numeral && /^[\s\p{Cc}\uFEFF]*[=+\-@\uFF1D\uFF0B\uFF0D\uFF20|]|^[\t\r\n]/u.test(text) ? `'${text}` : text;
  return /[",\r\n']/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/** The list as CSV (RFC 4180, lines end in CR LF), cost columns where it is priced. */
export function materialsCsv(rows: readonly (MaterialRow | PricedRow)[]): string {
  const priced = rows.some((row) => "cost" in row);
  const head = ["item", "quantity", "unit", "sold as", "for", "note", "price book name", ...(priced ? ["low", "likely", "high", "unpriced"] : [])];
  const lines = rows.map((row) => [
    row.item,
    row.quantity.value,
    row.unit,
    row.sold,
    row.from.join(" "),
    row.note,
    row.key,
    ...("cost" in row ? [row.cost?.low ?? "", row.cost?.likely ?? "", row.cost?.high ?? "", row.unpriced ?? ""] : []),
  ]);
  return [head, ...lines].map((line) => `${line.map(csvField).join(",")}\r\n`).join("");
}
