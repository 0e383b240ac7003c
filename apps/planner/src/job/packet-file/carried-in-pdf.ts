import { damaged, isDict, isRef, isText, PacketFileError, type PdfDict, PdfSource, type PdfValue } from "./pdf-source.js";

const MOST_SECTIONS = 50;
const MOST_OBJECTS = 200_000;
const MOST_FILES = 100;
const MOST_NODES = 200;
/** A job, a town's file, prices: kilobytes. */
const MOST_FILE_BYTES = 2_000_000;
const RESAVED = "This PDF was saved anew by another program, and its inner table is of a kind not read here. Open the packet as it was made, or its job file.";

/** The files a PDF carries, by name, none of them read yet; each is unpacked and bounded when it is asked for. */
export function carriedInPdf(bytes: Uint8Array): ReadonlyMap<string, () => Promise<Uint8Array>> {
  if (latin(bytes.subarray(0, 1024)).indexOf("%PDF-") < 0) throw new PacketFileError("This is not a PDF.");
  const pdf = new OpenPdf(bytes);
  const found = new Map<string, () => Promise<Uint8Array>>();
  let nodes = 0;
  const seen = new Set<PdfValue>();
  const collect = (given: PdfValue | undefined): void => {
    const node = pdf.resolve(given);
    if (!isDict(node)) return;
    if (seen.has(node) || ++nodes > MOST_NODES) throw damaged();
    seen.add(node);
    const pairs = pdf.resolve(node.get("Names"));
    if (Array.isArray(pairs))
      for (let i = 1; i < pairs.length; i += 2) {
        const specification = pdf.resolve(pairs[i]);
        if (!isDict(specification) || found.size >= MOST_FILES) throw damaged();
        const name = pdf.resolve(specification.get("UF") ?? specification.get("F"));
        const places = pdf.resolve(specification.get("EF"));
        const place = isDict(places) ? (places.get("F") ?? places.get("UF")) : undefined;
        if (isText(name) && isRef(place)) found.set(textOf(name.raw), () => pdf.streamOf(place.ref));
      }
    const kids = pdf.resolve(node.get("Kids"));
    if (Array.isArray(kids)) for (const kid of kids) collect(kid);
  };
  const names = pdf.resolve(pdf.catalog.get("Names"));
  collect(isDict(names) ? names.get("EmbeddedFiles") : undefined);
  return found;
}

class OpenPdf {
  readonly catalog: PdfDict;
  private readonly source: PdfSource;
  private readonly places = new Map<number, number>();
  private readonly read = new Map<number, PdfValue>();

  constructor(private readonly bytes: Uint8Array) {
    this.source = new PdfSource(latin(bytes));
    const start = this.source.text.lastIndexOf("startxref");
    if (start < 0) throw damaged();
    this.source.at = start + "startxref".length;
    const trailer = this.tables(this.source.count());
    if (trailer.has("Encrypt")) throw new PacketFileError("This PDF is locked with a password. Open the packet as it was made, or its job file.");
    const catalog = this.resolve(trailer.get("Root"));
    if (!isDict(catalog)) throw damaged();
    this.catalog = catalog;
  }

  /** Reads the tables from the last to the first; the last word on an object holds. */
  private tables(from: number): PdfDict {
    const seen = new Set<number>();
    let trailer: PdfDict | null = null;
    for (let at: number | null = from; at !== null; ) {
      if (seen.has(at) || seen.size >= MOST_SECTIONS || at >= this.bytes.length) throw damaged();
      seen.add(at);
      this.source.at = at;
      if (this.source.word() !== "xref") throw new PacketFileError(RESAVED);
      for (let word = this.source.word(); word !== "trailer"; word = this.source.word()) {
        if (!/^\d{1,7}$/.test(word)) throw damaged();
        const count = this.source.count();
        for (let i = 0; i < count; i++) {
          const place = this.source.count();
          this.source.count();
          const used = this.source.word();
          const number = Number(word) + i;
          if (used === "n" && !this.places.has(number)) this.places.set(number, place);
          if (this.places.size > MOST_OBJECTS) throw damaged();
        }
      }
      const read: PdfValue = this.source.value();
      if (!isDict(read)) throw damaged();
      trailer ??= read;
      const before = read.get("Prev");
      at = typeof before === "number" && Number.isInteger(before) && before >= 0 ? before : null;
    }
    return trailer ?? new Map();
  }

  resolve(value: PdfValue | undefined): PdfValue {
    let here: PdfValue = value ?? null;
    for (let steps = 0; isRef(here); steps++) {
      if (steps > 20) throw damaged();
      const number: number = here.ref;
      const known = this.read.get(number);
      here = known ?? this.object(number);
      this.read.set(number, here);
    }
    return here;
  }

  private object(number: number): PdfValue {
    const place = this.places.get(number);
    if (place === undefined) return null;
    if (place >= this.bytes.length) throw damaged();
    this.source.at = place;
    if (this.source.count() !== number) throw damaged();
    this.source.count();
    this.source.expect("obj");
    return this.source.value();
  }

  async streamOf(number: number): Promise<Uint8Array> {
    const dict = this.object(number);
    if (!isDict(dict)) throw damaged();
    this.source.expect("stream");
    const { text, at } = this.source;
    const begin = at + (text.startsWith("\r\n", at) ? 2 : 1);
    const length = this.resolve(dict.get("Length"));
    if (typeof length !== "number" || !Number.isInteger(length) || length < 0 || begin + length > this.bytes.length) throw damaged();
    const stored = this.bytes.subarray(begin, begin + length);
    const filter = this.resolve(dict.get("Filter"));
    const filters = Array.isArray(filter) ? filter : filter === null ? [] : [filter];
    if (filters.length === 0) return bounded(new Blob([new Uint8Array(stored)]).stream());
    const [only] = filters;
    if (filters.length > 1 || typeof only !== "object" || only === null || !("name" in only) || only.name !== "FlateDecode") throw new PacketFileError(RESAVED);
    return bounded(new Blob([new Uint8Array(stored)]).stream().pipeThrough(new DecompressionStream("deflate")));
  }
}

/** All of a stream, unless it is more than a file of a job can be. */
async function bounded(stream: ReadableStream<Uint8Array>): Promise<Uint8Array> {
  const parts: Uint8Array[] = [];
  let total = 0;
  const reader = stream.getReader();
  for (;;) {
    const { done, value } = await reader.read().catch(() => {
      throw damaged();
    });
    if (done) break;
    total += value.length;
    if (total > MOST_FILE_BYTES) {
      await reader.cancel();
      throw new PacketFileError("A file inside this PDF is larger than any job file.");
    }
    parts.push(value);
  }
  const made = new Uint8Array(total);
  let at = 0;
  for (const part of parts) {
    made.set(part, at);
    at += part.length;
  }
  return made;
}

// "latin1" of TextDecoder is another code page: one character a byte is needed.
function latin(bytes: Uint8Array): string {
  const parts: string[] = [];
  for (let at = 0; at < bytes.length; at += 32_768) parts.push(String.fromCharCode(...bytes.subarray(at, at + 32_768)));
  return parts.join("");
}

/** A text string: UTF-16 or UTF-8 with its mark, else one character a byte. */
function textOf(raw: string): string {
  const bytes = Uint8Array.from(raw, (char) => char.charCodeAt(0));
  if (raw.startsWith("\xfe\xff")) return new TextDecoder("utf-16be").decode(bytes.subarray(2));
  if (raw.startsWith("\xef\xbb\xbf")) return new TextDecoder().decode(bytes.subarray(3));
  return raw;
}
