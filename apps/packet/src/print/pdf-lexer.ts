import { isWord, PdfFormatError, type PdfName, type PdfString, type PdfValue, type PdfWord } from "./pdf-value.js";

const maxDepth = 64;
const newline = 10;
const carriageReturn = 13;

/** What a byte is in PDF source; anything else is regular. */
const BLANK = 1;
const DELIMITER = 2;
const classes = new Uint8Array(256);
for (const byte of [0, 9, newline, 12, carriageReturn, 32]) classes[byte] = BLANK;
for (const byte of Buffer.from("()<>[]{}/%")) classes[byte] = DELIMITER;

const NO_DIGIT = 255;
const hexDigits = new Uint8Array(256).fill(NO_DIGIT);
for (const [value, digit] of [..."0123456789abcdef"].entries()) for (const form of [digit, digit.toUpperCase()]) hexDigits[form.charCodeAt(0)] = value;

/** The bytes of a source as text, one character a byte: a cut of a string costs far less than one of a buffer. */
const texts = new WeakMap<Buffer, string>();
function textOf(bytes: Buffer): string {
  const known = texts.get(bytes);
  if (known !== undefined) return known;
  const text = bytes.toString("latin1");
  texts.set(bytes, text);
  return text;
}
const escapes: Readonly<Record<string, string>> = { n: "\n", r: "\r", t: "\t", b: "\b", f: "\f" };

/** Reads values one after another from PDF source (file body, content stream or character map). `spend` is told of every value, and once more for every 64 bytes, and may stop the reading. */
export class PdfLexer {
  private depth = 0;
  private charged: number;
  private readonly text: string;

  constructor(
    private readonly bytes: Buffer,
    public position: number,
    private readonly spend: (values: number) => void,
  ) {
    this.charged = position;
    this.text = textOf(bytes);
  }

  /** @returns the next value or word; undefined at the end. References come as two numbers and the word R, except inside brackets. */
  next(): PdfValue | PdfWord | undefined {
    this.skipBlank();
    this.charge();
    if (this.position >= this.bytes.length) return undefined;
    const char = this.text[this.position];
    if (classes[this.bytes[this.position]!] === 0) return this.plain();
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
    const end = this.text.indexOf(">", this.position);
    if (end < 0) throw this.wrong("a string without end");
    let raw = "";
    let high = -1;
    for (let at = this.position + 1; at < end; at += 1) {
      const byte = this.bytes[at]!;
      const digit = hexDigits[byte]!;
      if (digit === NO_DIGIT) {
        if (classes[byte] !== BLANK) throw this.wrong("a hexadecimal string with other characters");
      } else if (high < 0) high = digit;
      else {
        raw += String.fromCharCode(high * 16 + digit);
        high = -1;
      }
    }
    this.position = end + 1;
    return { kind: "string", raw: high < 0 ? raw : raw + String.fromCharCode(high * 16) };
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
    const source = this.text.slice(start, at - 1).replace(/\\([0-7]{1,3}|\r\n|[\s\S])|\r\n?/g, (all, escaped: string | undefined) => {
      if (escaped === undefined) return "\n"; // any line end in a string reads as one line feed
      if (/^[0-7]/.test(escaped)) return String.fromCharCode(Number.parseInt(escaped, 8) & 0xff);
      return /^[\r\n]/.test(escaped) ? "" : (escapes[escaped] ?? all.slice(1));
    });
    return { kind: "string", raw: source };
  }

  private plain(): PdfValue | PdfWord {
    // Only what begins with a sign, a point or a digit can be a number: + , - . / 0 to 9.
    const first = this.bytes[this.position]!;
    const numeral = first >= 0x2b && first <= 0x39;
    const short = numeral ? this.shortNumeral() : undefined;
    if (short !== undefined) return short;
    const text = this.regular();
    if (text === "") throw this.wrong("an unknown character");
    if (numeral && isNumeral(text)) return Number(text);
    if (text === "true" || text === "false") return text === "true";
    return text === "null" ? null : { kind: "word", word: text };
  }

  /** The numeral here, read without a cut of the text, for most of a drawing is numerals; undefined where it is long or none. */
  private shortNumeral(): number | undefined {
    const { bytes } = this;
    let at = this.position;
    const sign = bytes[at] === 0x2d ? -1 : 1;
    if (sign < 0 || bytes[at] === 0x2b) at += 1;
    let [whole, digits, scale] = [0, 0, 0];
    for (; at < bytes.length; at += 1) {
      const byte = bytes[at]!;
      if (byte >= 0x30 && byte <= 0x39) {
        whole = whole * 10 + byte - 0x30;
        digits += 1;
        scale *= 10;
      } else if (byte === 0x2e && scale === 0) scale = 1;
      else if (classes[byte] === 0) return undefined;
      else break;
    }
    // Both are exact up to 15 digits, so their quotient is the double nearest to what is written.
    if (digits === 0 || digits > 15) return undefined;
    this.position = at;
    return (sign * whole) / (scale || 1);
  }

  private word(length: number): PdfWord {
    const word = this.text.slice(this.position, this.position + length);
    this.position += length;
    return { kind: "word", word };
  }

  private regular(): string {
    const start = this.position;
    const { bytes } = this;
    let at = start;
    while (at < bytes.length && classes[bytes[at]!] === 0) at += 1;
    this.position = at;
    return this.text.slice(start, at);
  }

  private skipBlank(): void {
    for (; this.position < this.bytes.length; this.position += 1) {
      const byte = this.bytes[this.position] as number;
      if (byte === 0x25) while (this.position < this.bytes.length && !isLineEnd(this.bytes[this.position] as number)) this.position += 1;
      else if (classes[byte] !== BLANK) return;
    }
  }

  private wrong(what: string): PdfFormatError {
    return new PdfFormatError(`the PDF is damaged: ${what} near byte ${this.position}`);
  }
}

export function isCount(value: unknown): value is number {
  return typeof value === "number" && Number.isSafeInteger(value) && value >= 0;
}

/** A sign or none, digits with at most one point among or beside them. */
function isNumeral(text: string): boolean {
  let digits = 0;
  let points = 0;
  for (let at = text[0] === "+" || text[0] === "-" ? 1 : 0; at < text.length; at += 1) {
    const code = text.charCodeAt(at);
    if (code === 0x2e) points += 1;
    else if (code >= 0x30 && code <= 0x39) digits += 1;
    else return false;
  }
  return digits > 0 && points <= 1;
}

function isLineEnd(byte: number): boolean {
  return byte === newline || byte === carriageReturn;
}
