import type { PdfFile } from "./pdf-file.js";
import { pagesOf } from "./pdf-pages.js";
import {
  isArray,
  isDict,
  isName,
  isStream,
  isString,
  isWord,
  type PdfDict,
  PdfFormatError,
  type PdfStream,
  type PdfString,
  type PdfValue,
  pdfText,
} from "./pdf-value.js";

/** Stands in the text for a glyph that is an empty box, or that nothing says the meaning of. */
export const boxed = "\ufffd";

interface Font {
  readonly bytesPerCode: 1 | 2;
  readonly unicode: ReadonlyMap<number, string>;
}

/**
 * The text drawn on the pages, page by page, as the glyphs themselves give it: what is hidden was not drawn and is not in it.
 * White space is only hinted at (a line feed after each run). Glyph 0, the empty box of a font, reads as {@link boxed} whatever
 * text the browser noted beside it.
 */
export function printedText(file: PdfFile): string[] {
  const fonts = new Map<PdfDict, Font>();
  return pagesOf(file).map(({ dict }) => {
    const contents = file.resolve(dict.get("Contents"));
    const streams = (isArray(contents) ? contents : [contents]).map((part) => file.resolve(part)).filter(isStream);
    const parts = streams.map((stream) => file.read(stream));
    const source = parts.length === 1 ? parts[0]! : Buffer.concat(parts.flatMap((part) => [part, Buffer.from("\n")]));
    const drawn: string[] = [];
    draw(file, source, file.dict(dict.get("Resources")), fonts, drawn, 0);
    return drawn.join("");
  });
}

function draw(file: PdfFile, source: Buffer, resources: PdfDict | undefined, fonts: Map<PdfDict, Font>, drawn: string[], depth: number): void {
  if (depth > 32) throw new PdfFormatError("the PDF is damaged: drawings inside drawings without end");
  const lexer = file.lexer(source);
  const entry = (kind: string, name: PdfValue | undefined) => (isName(name) ? file.dict(resources?.get(kind))?.get(name.name) : undefined);
  let font: Font | undefined;
  const saved: (Font | undefined)[] = [];
  // Marked content says in ActualText what a cluster of glyphs stands for (ligatures, shaped scripts).
  const marks: { readonly actual: string | undefined; glyphs: boolean; box: boolean }[] = [];
  let operands: PdfValue[] = [];

  const show = (text: PdfString) => {
    const replacing = marks.find((mark) => mark.actual !== undefined);
    for (const code of codes(text, font?.bytesPerCode ?? 1)) {
      if (replacing === undefined) drawn.push(code === 0 ? boxed : (font?.unicode.get(code) ?? boxed));
      else {
        replacing.glyphs = true;
        replacing.box ||= code === 0;
      }
    }
  };
  const endMark = () => {
    const mark = marks.pop();
    if (mark?.actual !== undefined && mark.glyphs) drawn.push(mark.box ? boxed : mark.actual);
  };

  for (let item = lexer.next(); item !== undefined; item = lexer.next()) {
    if (!isWord(item)) {
      operands.push(item);
      continue;
    }
    switch (item.word) {
      case "Tj": {
        const text = operands.at(-1);
        if (isString(text)) show(text);
        break;
      }
      case "TJ": {
        const texts = operands.at(-1);
        if (isArray(texts)) texts.filter(isString).forEach(show);
        break;
      }
      case "q":
        saved.push(font);
        break;
      case "Q":
        font = saved.pop();
        break;
      case "Tf":
        font = fontOf(file, file.dict(entry("Font", operands[0])), fonts);
        break;
      case "ET":
        drawn.push("\n");
        break;
      case "BMC":
        marks.push({ actual: undefined, glyphs: false, box: false });
        break;
      case "BDC": {
        const about = operands.at(-1);
        const actual = isDict(about) ? about.get("ActualText") : undefined;
        marks.push({ actual: isString(actual) ? pdfText(actual) : undefined, glyphs: false, box: false });
        break;
      }
      case "EMC":
        endMark();
        break;
      case "Do": {
        const form = file.resolve(entry("XObject", operands[0]));
        if (isStream(form) && isFormOf(file, form)) draw(file, file.read(form), file.dict(form.dict.get("Resources")) ?? resources, fonts, drawn, depth + 1);
        break;
      }
      case "BI":
        throw new PdfFormatError("the PDF holds a picture inside its text: this reader does not know that");
    }
    operands = [];
  }
}

function isFormOf(file: PdfFile, stream: PdfStream): boolean {
  const subtype = file.resolve(stream.dict.get("Subtype"));
  return isName(subtype) && subtype.name === "Form";
}

function fontOf(file: PdfFile, dict: PdfDict | undefined, fonts: Map<PdfDict, Font>): Font | undefined {
  if (!dict) return undefined;
  const known = fonts.get(dict);
  if (known) return known;
  const subtype = file.resolve(dict.get("Subtype"));
  const map = file.resolve(dict.get("ToUnicode"));
  const font: Font = {
    bytesPerCode: isName(subtype) && subtype.name === "Type0" ? 2 : 1,
    unicode: isStream(map) ? readCharacterMap(file, file.read(map)) : new Map(),
  };
  fonts.set(dict, font);
  return font;
}

function readCharacterMap(file: PdfFile, source: Buffer): Map<number, string> {
  const unicode = new Map<number, string>();
  const lexer = file.lexer(source);
  let operands: PdfValue[] = [];
  for (let item = lexer.next(); item !== undefined; item = lexer.next()) {
    if (!isWord(item)) {
      operands.push(item);
      continue;
    }
    if (item.word === "endbfchar") for (let i = 0; i + 1 < operands.length; i += 2) unicode.set(codeOf(operands[i]), utf16(operands[i + 1]));
    if (item.word === "endbfrange")
      for (let i = 0; i + 2 < operands.length; i += 3) addRange(unicode, codeOf(operands[i]), codeOf(operands[i + 1]), operands[i + 2]);
    operands = [];
  }
  return unicode;
}

function addRange(unicode: Map<number, string>, from: number, to: number, target: PdfValue | undefined): void {
  if (to < from || to > 0xffff) throw new PdfFormatError("the PDF is damaged: a character map counts backwards");
  const first = isArray(target) ? "" : utf16(target);
  for (let code = from; code <= to; code += 1) {
    const head = first.slice(0, -1);
    unicode.set(code, isArray(target) ? utf16(target[code - from]) : head + String.fromCharCode(first.charCodeAt(first.length - 1) + code - from));
  }
}

function codeOf(value: PdfValue | undefined): number {
  return isString(value) ? (codes(value, value.raw.length === 1 ? 1 : 2)[0] ?? 0) : 0;
}

function utf16(value: PdfValue | undefined): string {
  return isString(value) ? pdfText({ kind: "string", raw: `\xfe\xff${value.raw}` }) : boxed;
}

function codes({ raw }: PdfString, bytesPerCode: 1 | 2): readonly number[] {
  const found: number[] = [];
  for (let i = 0; i < raw.length; i += bytesPerCode)
    found.push(bytesPerCode === 1 ? raw.charCodeAt(i) : raw.charCodeAt(i) * 256 + (raw.charCodeAt(i + 1) || 0));
  return found;
}
