import { isWord, PdfFormatError, type PdfName, type PdfString, type PdfValue, type PdfWord } from "./pdf-value.js";

const maxDepth = 64;
const newline = 10;
const carriageReturn = 13;

const whitespace = new Set([0, 9, newline, 12, carriageReturn, 32]);
const delimiters = new Set(Buffer.from("()<>[]{}/%"));
const escapes: Readonly<Record<string, string>> = { n: "\n", r: "\r", t: "\t", b: "\b", f: "\f" };

/** Reads values one after another from PDF source (file body, content stream or character map). `spend` is told of every value, and once more for every 64 bytes, and may stop the reading. */
export class PdfLexer {
  private depth = 0;
  private charged: number;

  constructor(
    private readonly bytes: Buffer,
    public position: number,
    private readonly spend: (values: number) => void,
  ) {
    this.charged = position;
  }

  /** @returns the next value or word; undefined at the end. References come as two numbers and the word R, except inside brackets. */
  next(): PdfValue | PdfWord | undefined {
    this.skipBlank();
    this.charge();
    if (this.position >= this.bytes.length) return undefined;
    const char = String.fromCharCode(this.bytes[this.position] as number);
    if (char === "/") return this.name();
    if (char === "(") return this.literal();
    if (char === "[") return this.inside(1, "]");
    if (char === "<") return this.bytes[this.position + 1] === 0x3c ? this.dict() : this.hex();
    if (char === "]" || char === "{" || char === "}") return this.word(1);
    if (char === ">") return this.word(this.bytes[this.position + 1] === 0x3e ? 2 : 1);
    if (char === ")") throw this.wrong("a closing bracket without its opening one");
    return this.plain();
  }

  /** Everything up to the first word that `ends` accepts, references put together. */
  until(ends: (word: string) => boolean): { values: PdfValue[]; word: string } {
    const values: PdfValue[] = [];
    for (;;) {
      const item = this.next();
      if (item === undefined) throw this.wrong("the end of the data inside a value");
      if (!isWord(item)) values.push(item);
      else if (ends(item.word)) return { values, word: item.word };
      else if (item.word === "R") {
        const [number, generation] = values.splice(-2);
        if (!isCount(number) || !isCount(generation)) throw this.wrong("a reference without its numbers");
        values.push({ kind: "ref", number });
      } else throw this.wrong(`the word "${item.word.slice(0, 20)}" where a value should be`);
    }
  }

  // Length counts too: objects written inside one another's long strings or comments would otherwise be read at no cost, over and over.
  private charge(): void {
    const long = Math.floor((this.position - this.charged) / 64);
    this.charged += long * 64;
    this.spend(1 + long);
  }

  private inside(opening: number, closing: string): PdfValue[] {
    this.depth += 1;
    if (this.depth > maxDepth) throw this.wrong("values nested too deep");
    this.position += opening;
    const { values } = this.until((word) => word === closing);
    this.depth -= 1;
    return values;
  }

  private dict(): ReadonlyMap<string, PdfValue> {
    const values = this.inside(2, ">>");
    const dict = new Map<string, PdfValue>();
    for (let i = 0; i < values.length; i += 2) {
      const key = values[i];
      const value = values[i + 1];
      if (typeof key !== "object" || key === null || !("kind" in key) || key.kind !== "name" || value === undefined)
        throw this.wrong("a dictionary without pairs");
      dict.set(key.name, value);
    }
    return dict;
  }

  private name(): PdfName {
    this.position += 1;
    return { kind: "name", name: this.regular().replace(/#([0-9A-Fa-f]{2})/g, (_all, hex: string) => String.fromCharCode(Number.parseInt(hex, 16))) };
  }

  private hex(): PdfString {
    const end = this.bytes.indexOf(">", this.position);
    if (end < 0) throw this.wrong("a string without end");
    const digits = this.bytes.toString("latin1", this.position + 1, end).replace(/[\0\t\n\f\r ]/g, "");
    if (/[^0-9A-Fa-f]/.test(digits)) throw this.wrong("a hexadecimal string with other characters");
    this.position = end + 1;
    return { kind: "string", raw: Buffer.from(digits.length % 2 === 0 ? digits : `${digits}0`, "hex").toString("latin1") };
  }

  private literal(): PdfString {
    const start = this.position + 1;
    let open = 1;
    let at = start;
    for (; open > 0; at += 1) {
      const byte = this.bytes[at];
      if (byte === undefined) throw this.wrong("a string without end");
      if (byte === 0x5c) at += 1;
      else if (byte === 0x28) open += 1;
      else if (byte === 0x29) open -= 1;
    }
    this.position = at;
    const source = this.bytes.toString("latin1", start, at - 1).replace(/\\([0-7]{1,3}|\r\n|[\s\S])|\r\n?/g, (all, escaped: string | undefined) => {
      if (escaped === undefined) return "\n"; // any line end in a string reads as one line feed
      if (/^[0-7]/.test(escaped)) return String.fromCharCode(Number.parseInt(escaped, 8) & 0xff);
      return /^[\r\n]/.test(escaped) ? "" : (escapes[escaped] ?? all.slice(1));
    });
    return { kind: "string", raw: source };
  }

  private plain(): PdfValue | PdfWord {
    const text = this.regular();
    if (text === "") throw this.wrong("an unknown character");
    if (/^[+-]?(\d+\.?\d*|\.\d+)$/.test(text)) return Number(text);
    if (text === "true" || text === "false") return text === "true";
    return text === "null" ? null : { kind: "word", word: text };
  }

  private word(length: number): PdfWord {
    const word = this.bytes.toString("latin1", this.position, this.position + length);
    this.position += length;
    return { kind: "word", word };
  }

  private regular(): string {
    const start = this.position;
    while (this.position < this.bytes.length && !this.isBreak(this.bytes[this.position] as number)) this.position += 1;
    return this.bytes.toString("latin1", start, this.position);
  }

  private isBreak(byte: number): boolean {
    return whitespace.has(byte) || delimiters.has(byte);
  }

  private skipBlank(): void {
    for (; this.position < this.bytes.length; this.position += 1) {
      const byte = this.bytes[this.position] as number;
      if (byte === 0x25) while (this.position < this.bytes.length && !isLineEnd(this.bytes[this.position] as number)) this.position += 1;
      else if (!whitespace.has(byte)) return;
    }
  }

  private wrong(what: string): PdfFormatError {
    return new PdfFormatError(`the PDF is damaged: ${what} near byte ${this.position}`);
  }
}

export function isCount(value: unknown): value is number {
  return typeof value === "number" && Number.isSafeInteger(value) && value >= 0;
}

function isLineEnd(byte: number): boolean {
  return byte === newline || byte === carriageReturn;
}
