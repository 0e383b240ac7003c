import type { PdfFile } from "./pdf-file.js";
import { isArray, isRef, type PdfArray, type PdfDict, PdfFormatError, type PdfValue } from "./pdf-value.js";

/** A page with what it inherits from the page tree put in. */
export interface PdfPage {
  /** Its object number; other objects point at it by that. */
  readonly number: number;
  readonly dict: PdfDict;
}

const inherited = ["Resources", "MediaBox"] as const;

/** The pages in reading order. */
export function pagesOf(file: PdfFile): PdfPage[] {
  const pages: PdfPage[] = [];
  const seen = new Set<number>();
  const walk = (value: PdfValue | undefined, above: PdfDict, depth: number) => {
    if (!isRef(value)) return;
    if (seen.has(value.number) || depth > 64) throw new PdfFormatError("the PDF is damaged: its pages point in a circle");
    seen.add(value.number);
    const own = file.dict(value);
    if (!own) throw new PdfFormatError("the PDF is damaged: a page is missing");
    const dict = new Map([...inherited.flatMap((key) => (above.has(key) ? [[key, above.get(key) as PdfValue] as const] : [])), ...own]);
    const kids = file.resolve(own.get("Kids"));
    if (isArray(kids)) for (const kid of kids) walk(kid, dict, depth + 1);
    else pages.push({ number: value.number, dict });
  };
  walk(file.catalog.get("Pages"), new Map(), 0);
  return pages;
}

/** Width and height of a page in points (1/72 in). */
export function pageSize(file: PdfFile, page: PdfPage): readonly [number, number] {
  const box = file.resolve(page.dict.get("MediaBox"));
  const [left, bottom, right, top] = (isArray(box) ? box : ([] as PdfArray)).map((side) => file.resolve(side));
  if (typeof left !== "number" || typeof bottom !== "number" || typeof right !== "number" || typeof top !== "number")
    throw new PdfFormatError("the PDF is damaged: a page has no size");
  return [right - left, top - bottom];
}
