/** What a look at the raw bytes of a printed PDF shows. Chromium writes PDF 1.4: no object streams, so dictionaries are plain text. */
export interface PdfFacts {
  readonly pages: number;
  readonly embeddedFonts: number;
  readonly tagged: boolean;
}

/** Counts pages and embedded font programs without a PDF library. */
export function inspectPdf(pdf: Uint8Array): PdfFacts {
  const text = Buffer.from(pdf.buffer, pdf.byteOffset, pdf.byteLength).toString("latin1");
  if (!text.startsWith("%PDF-")) return { pages: 0, embeddedFonts: 0, tagged: false };
  return {
    pages: count(text, /\/Type\s*\/Page(?![A-Za-z])/g),
    embeddedFonts: count(text, /\/FontFile[23]?\s+\d+ \d+ R/g),
    tagged: /\/MarkInfo\s*<<[^>]*\/Marked\s+true/.test(text),
  };
}

function count(text: string, pattern: RegExp): number {
  let found = 0;
  for (const _match of text.matchAll(pattern)) found += 1;
  return found;
}
