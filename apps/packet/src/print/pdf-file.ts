import { inflateSync } from "node:zlib";
import { isCount, PdfLexer } from "./pdf-lexer.js";
import { isArray, isDict, isName, isRef, isWord, type PdfDict, PdfFormatError, type PdfStream, type PdfValue } from "./pdf-value.js";

/** What a PDF may cost to read. */
export interface PdfLimits {
  /** Size of the file. */
  readonly fileBytes: number;
  /** All streams read, together, after decompression. */
  readonly streamBytes: number;
  /** All values and cross-reference entries read, together; a long one counts once for every 64 bytes. */
  readonly values: number;
}

export const ordinaryLimits: PdfLimits = { fileBytes: 256 * 2 ** 20, streamBytes: 256 * 2 ** 20, values: 8_000_000 };

/** An opened PDF: objects are read when asked for, once. */
export interface PdfFile {
  readonly trailer: PdfDict;
  readonly catalog: PdfDict;
  /** Where the newest cross-reference table starts. */
  readonly startXref: number;
  /** Follows references; null for what is absent. */
  resolve(value: PdfValue | undefined): PdfValue;
  dict(value: PdfValue | undefined): PdfDict | undefined;
  /** Content of a stream, decompressed. */
  read(stream: PdfStream): Buffer;
  /** A reader of values that counts against this file's limits. */
  lexer(source: Buffer): PdfLexer;
}

/** Opens a PDF with plain cross-reference tables (as Chromium and this program write). Throws PdfFormatError, naming what is wrong. */
export function openPdf(pdf: Uint8Array, limits: PdfLimits = ordinaryLimits): PdfFile {
  if (pdf.byteLength > limits.fileBytes) throw new PdfFormatError(`the PDF has ${pdf.byteLength} bytes; at most ${limits.fileBytes} are read`);
  const bytes = Buffer.from(pdf.buffer, pdf.byteOffset, pdf.byteLength);
  if (!bytes.subarray(0, 5).equals(Buffer.from("%PDF-"))) throw new PdfFormatError("not a PDF: it does not start with %PDF-");
  const spendValues = budget(limits.values, "values");
  const spendStream = budget(limits.streamBytes, "bytes of streams");
  const lexer = (source: Buffer, at = 0) => new PdfLexer(source, at, spendValues);

  const { startXref, trailer, offsets } = readXref(bytes, (at) => lexer(bytes, at));
  if (trailer.has("Encrypt")) throw new PdfFormatError("the PDF is encrypted: remove the password first");
  const parsed = new Map<number, PdfValue>();
  const underWay = new Set<number>();

  function object(number: number): PdfValue {
    const known = parsed.get(number);
    if (known !== undefined) return known;
    const offset = offsets.get(number);
    if (offset === undefined) return null;
    if (underWay.has(number)) throw new PdfFormatError(`the PDF is damaged: object ${number} contains itself`);
    underWay.add(number);
    const value = readObject(number, offset);
    underWay.delete(number);
    parsed.set(number, value);
    return value;
  }

  function readObject(number: number, offset: number): PdfValue {
    const at = lexer(bytes, offset);
    const [found, generation, obj] = [at.next(), at.next(), at.next()];
    if (found !== number || !isCount(generation) || !isWord(obj) || obj.word !== "obj")
      throw new PdfFormatError(`the PDF is damaged: object ${number} is not where its table says`);
    const { values, word } = at.until((end) => end === "endobj" || end === "stream");
    const [value] = values;
    if (values.length !== 1 || value === undefined) throw new PdfFormatError(`the PDF is damaged: object ${number} is not one value`);
    if (word === "endobj") return value;
    const length = isDict(value) ? resolve(value.get("Length")) : null;
    const start = at.position + (bytes[at.position] === 13 ? 2 : 1);
    if (!isDict(value) || !isCount(length) || !/^\r?\n?endstream/.test(bytes.toString("latin1", start + length, start + length + 12)))
      throw new PdfFormatError(`the PDF is damaged: the length of stream ${number} is wrong`);
    return { kind: "stream", dict: value, stored: bytes.subarray(start, start + length) };
  }

  function resolve(value: PdfValue | undefined): PdfValue {
    let current = value ?? null;
    for (let step = 0; isRef(current); step += 1) {
      if (step === 16) throw new PdfFormatError("the PDF is damaged: references in a circle");
      current = object(current.number);
    }
    return current;
  }

  function dict(value: PdfValue | undefined): PdfDict | undefined {
    const resolved = resolve(value);
    return isDict(resolved) ? resolved : undefined;
  }

  function read({ dict: about, stored }: PdfStream): Buffer {
    const named = resolve(about.get("Filter"));
    const filters = (isArray(named) ? named : [named]).map((filter) => resolve(filter)).filter((filter) => filter !== null);
    if (filters.length === 0) {
      spendStream(stored.length);
      return stored;
    }
    const [filter] = filters;
    if (filters.length > 1 || !isName(filter) || filter.name !== "FlateDecode" || resolve(about.get("DecodeParms")) !== null)
      throw new PdfFormatError("a stream of the PDF is packed in a way this program does not unpack");
    const content = inflate(stored, spendStream(0));
    spendStream(content.length);
    return content;
  }

  const catalog = dict(trailer.get("Root"));
  if (!catalog) throw new PdfFormatError("the PDF is damaged: it has no catalog");
  return { trailer, catalog, startXref, resolve, dict, read, lexer };
}

/** Counts down; throws when the limit is passed. @returns what is left. */
function budget(limit: number, what: string): (amount: number) => number {
  let left = limit;
  return (amount) => {
    left -= amount;
    if (left < 0) throw new PdfFormatError(`the PDF holds more than ${limit} ${what}: too much to read`);
    return left;
  };
}

function inflate(stored: Buffer, most: number): Buffer {
  try {
    return inflateSync(stored, { maxOutputLength: Math.max(most, 1) });
  } catch (error) {
    const tooLarge = error instanceof Error && "code" in error && error.code === "ERR_BUFFER_TOO_LARGE";
    throw new PdfFormatError(tooLarge ? "a stream of the PDF unpacks to more than this program reads" : "a packed stream of the PDF is damaged", {
      cause: error,
    });
  }
}

function readXref(bytes: Buffer, lexerAt: (at: number) => PdfLexer): { startXref: number; trailer: PdfDict; offsets: Map<number, number> } {
  const said = [...bytes.toString("latin1", Math.max(0, bytes.length - 1024)).matchAll(/startxref\s+(\d{1,12})\s/g)].at(-1)?.[1];
  if (said === undefined) throw new PdfFormatError("the PDF is cut off or damaged: its end does not say where its table is");
  const startXref = Number(said);
  const offsets = new Map<number, number>();
  const seen = new Set<number>();
  const free = new Set<number>();
  let newest: PdfDict | undefined;
  for (let at: number | undefined = startXref; at !== undefined; ) {
    if (seen.has(at)) throw new PdfFormatError("the PDF is damaged: its tables point in a circle");
    seen.add(at);
    const trailer = readTable(lexerAt(at), (number, offset) => {
      if (offsets.has(number) || free.has(number)) return; // a newer table has spoken
      if (offset === undefined) free.add(number);
      else offsets.set(number, offset);
    });
    newest ??= trailer;
    const previous = trailer.get("Prev");
    if (previous !== undefined && !isCount(previous)) throw new PdfFormatError("the PDF is damaged: a table points nowhere");
    at = previous;
  }
  return { startXref, trailer: newest as PdfDict, offsets };
}

function readTable(lexer: PdfLexer, entry: (number: number, offset: number | undefined) => void): PdfDict {
  const first = lexer.next();
  if (!isWord(first) || first.word !== "xref") {
    throw new PdfFormatError(
      typeof first === "number"
        ? "the PDF keeps its object table in a compressed stream: another program has saved it anew, and this one reads only the plain table"
        : "the PDF is damaged: no object table where its end says",
    );
  }
  for (;;) {
    const start = lexer.next();
    if (isWord(start) && start.word === "trailer") break;
    const count = lexer.next();
    if (!isCount(start) || !isCount(count)) throw new PdfFormatError("the PDF is damaged: its object table cannot be read");
    for (let i = 0; i < count; i += 1) {
      const [offset, generation, kind] = [lexer.next(), lexer.next(), lexer.next()];
      if (!isCount(offset) || !isCount(generation) || !isWord(kind) || !["n", "f"].includes(kind.word))
        throw new PdfFormatError("the PDF is damaged: its object table cannot be read");
      entry(start + i, kind.word === "n" ? offset : undefined);
    }
  }
  const trailer = lexer.next();
  if (!isDict(trailer as PdfValue)) throw new PdfFormatError("the PDF is damaged: its table has no trailer");
  return trailer as PdfDict;
}
