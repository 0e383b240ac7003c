/** A date as a PDF writes it, without zone: fourteen digits, UTC, whole seconds. Throws RangeError on a date that is none. */
export function pdfStamp(date: Date): string {
  if (Number.isNaN(date.getTime())) throw new RangeError("the date of the PDF is not a date");
  return date.toISOString().slice(0, 19).replace(/\D/g, "").padStart(14, "0");
}
