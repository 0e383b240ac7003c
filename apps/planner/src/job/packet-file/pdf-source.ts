/** Why a file cannot be read as a packet, in one sentence for a person. */
export class PacketFileError extends Error {
  override readonly name = "PacketFileError";
}

export type PdfValue = null | boolean | number | { readonly name: string } | { readonly raw: string } | { readonly ref: number } | PdfList | PdfDict;
export type PdfList = readonly PdfValue[];
export type PdfDict = ReadonlyMap<string, PdfValue>;

export const isDict = (value: unknown): value is PdfDict => value instanceof Map;
export const isRef = (value: unknown): value is { readonly ref: number } => typeof value === "object" && value !== null && "ref" in value;
export const isText = (value: unknown): value is { readonly raw: string } => typeof value === "object" && value !== null && "raw" in value;

const DAMAGED = "This PDF is damaged: its inner table cannot be read.";
export const damaged = (): PacketFileError => new PacketFileError(DAMAGED);

const MOST_VALUES = 400_000;
const MOST_DEPTH = 40;
const SPACE = /[\0\t\n\f\r ]/;
const END = /[\0\t\n\f\r ()<>[\]{}/%]/;

/** Reads values out of a PDF's bytes, one character a byte; counts them, so that no file keeps it busy. */
export class PdfSource {
  private values = 0;
  at = 0;
  constructor(readonly text: string) {}

  /** The next word that stands alone ("xref", "obj", a number). */
  word(): string {
    this.skip();
    const from = this.at;
    while (this.at < this.text.length && this.at - from < 200 && !END.test(this.text[this.at]!)) this.at++;
    return this.text.slice(from, this.at);
  }

  count(): number {
    const word = this.word();
    if (!/^\d{1,10}$/.test(word)) throw damaged();
    return Number(word);
  }

  expect(wanted: string): void {
    if (this.word() !== wanted) throw damaged();
  }

  private skip(): void {
    for (;;) {
      while (this.at < this.text.length && SPACE.test(this.text[this.at]!)) this.at++;
      if (this.text[this.at] !== "%") return;
      while (this.at < this.text.length && !/[\r\n]/.test(this.text[this.at]!)) this.at++;
    }
  }

  value(depth = 0): PdfValue {
    if (++this.values > MOST_VALUES || depth > MOST_DEPTH) throw damaged();
    this.skip();
    const here = this.text[this.at];
    if (here === "/") {
      this.at++;
      return { name: this.nameWord() };
    }
    if (here === "(") return { raw: this.literal() };
    if (here === "[") return this.list(depth);
    if (this.text.startsWith("<<", this.at)) return this.dict(depth);
    if (here === "<") return { raw: this.hexadecimal() };
    const word = this.word();
    if (word === "null") return null;
    if (word === "true" || word === "false") return word === "true";
    if (!/^[+-]?(\d+\.?\d*|\.\d+)$/.test(word)) throw damaged();
    const back = this.at;
    const rest = /^[\0\t\n\f\r ]+\d{1,5}[\0\t\n\f\r ]+R(?![A-Za-z0-9])/.exec(this.text.slice(back, back + 40));
    if (rest && /^\d{1,10}$/.test(word)) {
      this.at = back + rest[0].length;
      return { ref: Number(word) };
    }
    return Number(word);
  }

  private nameWord(): string {
    return this.word().replace(/#([0-9A-Fa-f]{2})/g, (_, code: string) => String.fromCharCode(Number.parseInt(code, 16)));
  }

  private list(depth: number): PdfList {
    const made: PdfValue[] = [];
    this.at++;
    for (this.skip(); this.text[this.at] !== "]"; this.skip()) made.push(this.value(depth + 1));
    this.at++;
    return made;
  }

  private dict(depth: number): PdfDict {
    const made = new Map<string, PdfValue>();
    this.at += 2;
    for (this.skip(); !this.text.startsWith(">>", this.at); this.skip()) {
      if (this.text[this.at] !== "/") throw damaged();
      this.at++;
      made.set(this.nameWord(), this.value(depth + 1));
    }
    this.at += 2;
    return made;
  }

  private hexadecimal(): string {
    const end = this.text.indexOf(">", this.at);
    if (end < 0) throw damaged();
    const digits = this.text.slice(this.at + 1, end).replace(/[\0\t\n\f\r ]/g, "");
    if (/[^0-9A-Fa-f]/.test(digits)) throw damaged();
    this.at = end + 1;
    return (digits.match(/../g) ?? []).map((pair) => String.fromCharCode(Number.parseInt(pair, 16))).join("");
  }

  private literal(): string {
    let made = "";
    let open = 0;
    for (this.at++; this.at < this.text.length; this.at++) {
      const here = this.text[this.at]!;
      if (here === "\\") {
        const escaped = /^\\(?:([0-7]{1,3})|(\r\n|[\s\S]))/.exec(this.text.slice(this.at, this.at + 4));
        if (escaped === null) throw damaged();
        this.at += escaped[0].length - 1;
        made += escaped[1] === undefined ? (ESCAPES[escaped[2]!] ?? escaped[2]!) : String.fromCharCode(Number.parseInt(escaped[1], 8) & 255);
        continue;
      }
      if (here === "(") open++;
      if (here === ")" && open-- === 0) {
        this.at++;
        return made;
      }
      made += here;
    }
    throw damaged();
  }
}
const ESCAPES: Readonly<Record<string, string>> = { n: "\n", r: "\r", t: "\t", b: "\b", f: "\f", "\n": "", "\r": "", "\r\n": "" };
