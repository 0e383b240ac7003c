import { pdfStamp } from "./pdf-stamp.js";

// A stream is passed over whole; what is matched outside is a key with its value. Strings in a PDF carry escaped brackets, so none can hold a match.
const stream = String.raw`stream\r?\n[\s\S]*?endstream`;
const dateField = new RegExp(String.raw`${stream}|(/(?:CreationDate|ModDate) \(D:)\d{14}[+-]\d\d'\d\d'(?=\))`, "g");
// The keys that carry the browser's structure ids: a cell's own, those of its headers, and the tree that finds cells by them.
const id = String.raw`\(node\d{8}\)`;
const idField = new RegExp(String.raw`${stream}|/ID ${id}|/(?:Headers|Limits) \[(?:${id}\s*)+\]|/Names \[(?:${id} \d+ \d+ R\s*)+\]`, "g");
const nodeId = /\(node(\d{8})\)/g;

/**
 * Makes two prints of one document identical: the two date fields take the given date (UTC, whole seconds) and the structure
 * ids, which the browser counts on from page to page, are numbered again from 1 in their own order. Every replacement has the
 * width of what it replaces, so offsets and the cross-reference table stay true.
 * @returns a new array of the same length. Throws when there are not exactly two date fields.
 */
export function fixVariable(pdf: Uint8Array, date: Date): Uint8Array {
  const text = Buffer.from(pdf.buffer, pdf.byteOffset, pdf.byteLength).toString("latin1");
  const stamp = pdfStamp(date);
  let dates = 0;
  const dated = text.replace(dateField, (all, before: string | undefined) => {
    if (before === undefined) return all;
    dates += 1;
    return `${before}${stamp}+00'00'`;
  });
  if (dates !== 2) throw new Error(`expected 2 date fields in the PDF, found ${dates}: this browser writes a PDF this program does not know`);

  const ids = new Set<string>();
  for (const [field] of dated.matchAll(idField)) if (field.startsWith("/")) for (const [, digits] of field.matchAll(nodeId)) ids.add(digits as string);
  // Equal width, so text order is number order; keeping the order keeps the PDF's sorted name tree sorted.
  const rank = new Map([...ids].sort().map((digits, index) => [digits, String(index + 1).padStart(8, "0")]));
  const numbered = dated.replace(idField, (field) =>
    field.startsWith("/") ? field.replace(nodeId, (_id, digits: string) => `(node${rank.get(digits)})`) : field,
  );

  const fixed = Buffer.from(numbered, "latin1");
  if (fixed.length !== pdf.length) throw new Error(`the PDF changed length from ${pdf.length} to ${fixed.length} bytes`);
  return new Uint8Array(fixed.buffer, fixed.byteOffset, fixed.length);
}
