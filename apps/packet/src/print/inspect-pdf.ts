import { openPdf, type PdfFile } from "./pdf-file.js";
import { type PdfPage, pageSize, pagesOf } from "./pdf-pages.js";
import { isArray, isName, isRef, isStream, isString, type PdfDict, PdfFormatError, type PdfValue, pdfText } from "./pdf-value.js";

/** A link on a page: to a page of the same PDF, to an address, or (both absent) to nothing. */
export interface PdfLink {
  readonly page: number;
  readonly toPage?: number;
  readonly address?: string;
  /** The name of the place, where the link goes by one. */
  readonly place?: string;
}

/** What a printed PDF is made of. Pages count from 1. */
export interface PdfFacts {
  readonly pages: number;
  /** Width and height of each page in points (1/72 in). */
  readonly sizes: readonly (readonly [number, number])[];
  readonly embeddedFonts: number;
  readonly tagged: boolean;
  readonly title: string;
  readonly language: string;
  /** Whether a viewer is told to show the title, not the file name. */
  readonly showsTitle: boolean;
  readonly outline: readonly { readonly level: number; readonly title: string; readonly page: number | undefined }[];
  readonly links: readonly PdfLink[];
}

/** Reads the facts from an opened PDF. Throws PdfFormatError where it is damaged. */
export function inspectPdf(pdf: Uint8Array | PdfFile): PdfFacts {
  const file = pdf instanceof Uint8Array ? openPdf(pdf) : pdf;
  const { catalog } = file;
  const pages = pagesOf(file);
  const info = file.dict(file.trailer.get("Info"));
  const structure = file.dict(catalog.get("StructTreeRoot"));
  return {
    pages: pages.length,
    sizes: pages.map((page) => pageSize(file, page)),
    embeddedFonts: countFonts(file, pages),
    tagged: file.dict(catalog.get("MarkInfo"))?.get("Marked") === true && structure?.has("K") === true,
    title: textOf(file, info?.get("Title")),
    language: textOf(file, catalog.get("Lang")),
    showsTitle: file.dict(catalog.get("ViewerPreferences"))?.get("DisplayDocTitle") === true,
    outline: readOutline(file, pages),
    links: pages.flatMap((page, index) => linksOn(file, page, index + 1, pages)),
  };
}

// Of the fonts the pages and the drawings within them name, those whose program is in the file.
function countFonts(file: PdfFile, pages: readonly PdfPage[]): number {
  const programs = new Set<PdfValue>();
  const seen = new Set<PdfDict>();
  const search = (value: PdfValue | undefined) => {
    const resources = file.dict(value);
    if (!resources || seen.has(resources)) return;
    seen.add(resources);
    for (const font of file.dict(resources.get("Font"))?.values() ?? []) addProgram(file, file.dict(font), programs);
    for (const drawing of file.dict(resources.get("XObject"))?.values() ?? []) {
      const form = file.resolve(drawing);
      if (isStream(form)) search(form.dict.get("Resources"));
    }
  };
  for (const page of pages) search(page.dict.get("Resources"));
  return programs.size;
}

function addProgram(file: PdfFile, font: PdfDict | undefined, programs: Set<PdfValue>): void {
  const below = file.resolve(font?.get("DescendantFonts"));
  for (const one of [font, ...(isArray(below) ? below.map((descendant) => file.dict(descendant)) : [])]) {
    const descriptor = file.dict(one?.get("FontDescriptor"));
    for (const key of ["FontFile", "FontFile2", "FontFile3"]) {
      const program = file.resolve(descriptor?.get(key));
      if (isStream(program)) programs.add(program);
    }
  }
}

function readOutline(file: PdfFile, pages: readonly PdfPage[]): PdfFacts["outline"] {
  const entries: { level: number; title: string; page: number | undefined }[] = [];
  const seen = new Set<PdfDict>();
  const walk = (value: PdfValue | undefined, level: number) => {
    for (let entry = file.dict(value); entry; entry = file.dict(entry.get("Next"))) {
      if (seen.has(entry) || level > 32) throw new PdfFormatError("the PDF is damaged: its outline runs in a circle");
      seen.add(entry);
      entries.push({ level, title: textOf(file, entry.get("Title")), page: destination(file, entry.get("Dest"), pages) });
      walk(entry.get("First"), level + 1);
    }
  };
  walk(file.dict(file.catalog.get("Outlines"))?.get("First"), 1);
  return entries;
}

function linksOn(file: PdfFile, { dict }: PdfPage, page: number, pages: readonly PdfPage[]): PdfLink[] {
  const annotations = file.resolve(dict.get("Annots"));
  return (isArray(annotations) ? annotations : []).flatMap((value): PdfLink[] => {
    const annotation = file.dict(value);
    if (!annotation || nameOf(file, annotation.get("Subtype")) !== "Link") return [];
    const action = file.dict(annotation.get("A"));
    const target = annotation.get("Dest") ?? (nameOf(file, action?.get("S")) === "GoTo" ? action?.get("D") : undefined);
    if (target === undefined) return [{ page, address: textOf(file, action?.get("URI")) }];
    const toPage = destination(file, target, pages);
    const place = nameOf(file, target) || textOf(file, target);
    return [{ page, ...(toPage === undefined ? {} : { toPage }), ...(place === "" ? {} : { place }) }];
  });
}

// A destination is written out, or named in the catalog's dictionary of them.
function destination(file: PdfFile, value: PdfValue | undefined, pages: readonly PdfPage[]): number | undefined {
  const named = nameOf(file, value) || textOf(file, value);
  const target = file.resolve(named === "" ? value : file.dict(file.catalog.get("Dests"))?.get(named));
  const [page] = isArray(target) ? target : [];
  const index = isRef(page) ? pages.findIndex(({ number }) => number === page.number) : -1;
  return index < 0 ? undefined : index + 1;
}

function nameOf(file: PdfFile, value: PdfValue | undefined): string {
  const resolved = file.resolve(value);
  return isName(resolved) ? resolved.name : "";
}

function textOf(file: PdfFile, value: PdfValue | undefined): string {
  const resolved = file.resolve(value);
  return isString(resolved) ? pdfText(resolved) : "";
}
