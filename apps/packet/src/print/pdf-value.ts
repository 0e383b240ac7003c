/** A PDF that cannot be read: damaged, hostile, or of a kind this reader does not know. */
export class PdfFormatError extends Error {
  override readonly name = "PdfFormatError";
}

export interface PdfName {
  readonly kind: "name";
  readonly name: string;
}
/** Raw bytes of a string, one character each; see {@link pdfText}. */
export interface PdfString {
  readonly kind: "string";
  readonly raw: string;
}
export interface PdfRef {
  readonly kind: "ref";
  readonly number: number;
}
export interface PdfStream {
  readonly kind: "stream";
  readonly dict: PdfDict;
  /** As stored, before any filter is undone. */
  readonly stored: Buffer;
}
/** A keyword or operator, or a closing bracket. */
export interface PdfWord {
  readonly kind: "word";
  readonly word: string;
}
export type PdfDict = ReadonlyMap<string, PdfValue>;
export type PdfArray = readonly PdfValue[];
export type PdfValue = null | boolean | number | PdfName | PdfString | PdfRef | PdfArray | PdfDict | PdfStream;

export const isDict = (value: PdfValue | undefined): value is PdfDict => value instanceof Map;
export const isArray = (value: PdfValue | undefined): value is PdfArray => Array.isArray(value);
const isKind = <K extends string>(value: unknown, kind: K) => typeof value === "object" && value !== null && "kind" in value && value.kind === kind;
export const isName = (value: PdfValue | undefined): value is PdfName => isKind(value, "name");
export const isString = (value: PdfValue | undefined): value is PdfString => isKind(value, "string");
export const isRef = (value: PdfValue | undefined): value is PdfRef => isKind(value, "ref");
export const isStream = (value: PdfValue | undefined): value is PdfStream => isKind(value, "stream");
export const isWord = (value: PdfValue | PdfWord | undefined): value is PdfWord => isKind(value, "word");

/** A text string decoded: UTF-16 or UTF-8 with its mark, else as Latin-1 (of PDFDocEncoding the part that matters here). */
export function pdfText({ raw }: PdfString): string {
  const bytes = Buffer.from(raw, "latin1");
  if (raw.startsWith("\xfe\xff"))
    return Buffer.from(bytes.subarray(2, bytes.length - (bytes.length % 2)))
      .swap16()
      .toString("utf16le");
  if (raw.startsWith("\xef\xbb\xbf")) return bytes.subarray(3).toString("utf8");
  return raw;
}

/** A value as PDF source; strings in hexadecimal, so that nothing needs escaping. */
export function writeValue(value: PdfValue): string {
  if (value === null || typeof value === "boolean") return String(value);
  if (typeof value === "number") return Number.isInteger(value) ? String(value) : value.toFixed(5);
  if (isArray(value)) return `[${value.map(writeValue).join(" ")}]`;
  if (isDict(value)) return `<<${[...value].map(([key, entry]) => `${writeName(key)} ${writeValue(entry)}`).join("\n")}>>`;
  if (isName(value)) return writeName(value.name);
  if (isString(value)) return `<${Buffer.from(value.raw, "latin1").toString("hex").toUpperCase()}>`;
  if (isRef(value)) return `${value.number} 0 R`;
  throw new PdfFormatError("a stream cannot stand inside another value");
}

function writeName(name: string): string {
  return `/${name.replace(/[^A-Za-z0-9.+_-]/g, (char) => `#${char.charCodeAt(0).toString(16).toUpperCase().padStart(2, "0")}`)}`;
}
