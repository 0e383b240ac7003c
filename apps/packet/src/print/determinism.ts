const dateField = /(\/(?:CreationDate|ModDate) \(D:)\d{14}([+-]\d\d'\d\d')(?=\))/g;
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
  const dated = text.replace(dateField, (_all, before: string) => {
    dates += 1;
    return `${before}${stamp}+00'00'`;
  });
  if (dates !== 2) throw new Error(`expected 2 date fields in the PDF, found ${dates}: this browser writes a PDF this program does not know`);

  const ids = new Set<string>();
  for (const [, digits] of dated.matchAll(nodeId)) ids.add(digits as string);
  // Equal width, so text order is number order; keeping the order keeps the PDF's sorted name tree sorted.
  const rank = new Map([...ids].sort().map((digits, index) => [digits, String(index + 1).padStart(8, "0")]));
  const numbered = dated.replace(nodeId, (_all, digits: string) => `(node${rank.get(digits)})`);

  const fixed = Buffer.from(numbered, "latin1");
  if (fixed.length !== pdf.length) throw new Error(`the PDF changed length from ${pdf.length} to ${fixed.length} bytes`);
  return new Uint8Array(fixed.buffer, fixed.byteOffset, fixed.length);
}

function pdfStamp(date: Date): string {
  if (Number.isNaN(date.getTime())) throw new RangeError("the date of the PDF is not a date");
  return date.toISOString().slice(0, 19).replace(/\D/g, "").padStart(14, "0");
}
