import { isNode, LineCounter, type Node } from "yaml";
import * as z from "zod";
import { offsetOf } from "../job/node-offset.js";
import { firstOf, type Issue, parseStrictly } from "../job/read.js";

const money = z.number().min(0).max(1_000_000);

const price = z.strictObject({ unit: z.enum(["ft", "each"]), low: money, likely: money, high: money }).superRefine((of, context) => {
  if (of.low > of.likely) context.addIssue({ code: "custom", path: ["low"], message: `low ${of.low} is more than likely ${of.likely}` });
  if (of.likely > of.high) context.addIssue({ code: "custom", path: ["high"], message: `high ${of.high} is less than likely ${of.likely}` });
});

export const priceBookSchema = z.strictObject({
  format: z.literal("branchwork-prices/1"),
  currency: z.string().regex(/^[A-Z]{3}$/, "write the three capital letters of the currency, for example USD"),
  date: z.string().regex(/^\d{4}-\d{2}-\d{2}$/, 'write the day in quotation marks, for example "2026-03-01"'),
  source: z.string().trim().min(1).max(400).describe("where the prices are from"),
  items: z.record(z.string().min(1).max(80), price).refine((items) => Object.keys(items).length <= 5000, "at most 5000 items"),
});

/** Prices by the name of an item: low, likely and high of one unit. */
export type PriceBook = z.output<typeof priceBookSchema>;
export type Price = PriceBook["items"][string];
export type PriceBookReading = { readonly ok: true; readonly book: PriceBook } | { readonly ok: false; readonly issues: readonly Issue[] };

const MAX_CHARACTERS = 1_000_000;

/** Reads a price book (YAML text). A file that cannot be read gives issues with line and column; nothing is thrown for bad text. */
export function readPriceBook(text: string): PriceBookReading {
  const source = text.startsWith("\uFEFF") ? text.slice(1) : text;
  const lines = new LineCounter();
  const issue = (offset: number, path: string, what: string, mend: string): Issue => {
    const { line, col } = lines.linePos(offset);
    return { line: Math.max(1, line), column: Math.max(1, col), path, what, mend };
  };
  if (source.length > MAX_CHARACTERS)
    return { ok: false, issues: [issue(0, "", `longer than ${MAX_CHARACTERS} characters`, "a price book is a few kilobytes; check that this is one")] };
  const parsed = parseStrictly(source, lines);
  if (parsed === null) return { ok: false, issues: [issue(0, "", "the values are nested too deeply to read", "a price book nests three levels")] };
  const { document, refused } = parsed;
  if (refused.length > 0) return { ok: false, issues: firstOf(refused.map(({ offset, what, mend }) => issue(offset, "", what, mend))) };
  const root: Node | null = isNode(document.contents) ? document.contents : null;
  const result = priceBookSchema.safeParse(document.toJS({ maxAliasCount: 0 }));
  if (result.success) return { ok: true, book: result.data };
  const issues = result.error.issues.flatMap((found) => {
    const path = found.path.map((step) => (typeof step === "number" ? step : String(step)));
    if (found.code === "unrecognized_keys")
      return found.keys.slice(0, 50).map((key) => {
        const at = [...path, key];
        return issue(offsetOf(root, at, true), at.join("."), `"${key.slice(0, 60)}" is not a field here`, "remove it, or correct its name");
      });
    return [issue(offsetOf(root, path, false), path.join("."), found.message, mendOf(path))];
  });
  return { ok: false, issues: firstOf(issues.sort((a, b) => a.line - b.line || a.column - b.column)) };
}

function mendOf(path: readonly (string | number)[]): string {
  if (path.length === 0) return 'begin with "format: branchwork-prices/1"';
  if (path[0] === "items") return 'write each item as "name: { unit: ft, low: 1.10, likely: 1.40, high: 1.90 }", unit ft or each, low ≤ likely ≤ high';
  return 'give format, currency, date, source and items, as in "currency: USD"';
}
