import { createHash } from "node:crypto";
import { isPlainFileName } from "./attachment-name.js";
import { openPdf, type PdfFile } from "./pdf-file.js";
import { isCount } from "./pdf-lexer.js";
import { pdfStamp } from "./pdf-stamp.js";
import { isRef, type PdfDict, PdfFormatError, type PdfString, type PdfValue, writeValue } from "./pdf-value.js";

/** A file carried inside a PDF. */
export interface Attachment {
  readonly name: string;
  readonly bytes: Uint8Array;
  /** Media type, as `application/json`. */
  readonly media: string;
  /** One line for the reader of the PDF. */
  readonly description: string;
}

interface Written {
  readonly number: number;
  readonly source: Buffer;
}

/**
 * Puts files into a finished PDF by an incremental update: the PDF's own bytes stay as they are, the new objects and a table
 * of them follow. The files stand in it unpacked, because packing gives other bytes on other machines.
 * @param date written as the files' date (UTC, whole seconds)
 * @returns a new array. Throws RangeError on a bad or double name, PdfFormatError on a PDF that cannot be read or carries files already.
 */
export function attachFiles(pdf: Uint8Array, files: readonly Attachment[], { date }: { readonly date: Date }): Uint8Array {
  assertNames(files);
  const file = openPdf(pdf);
  const root = file.trailer.get("Root");
  const size = file.trailer.get("Size");
  if (!isRef(root) || !isCount(size)) throw new PdfFormatError("the PDF is damaged: its trailer lacks Root or Size");
  const names = file.dict(file.catalog.get("Names"));
  if (names?.has("EmbeddedFiles")) throw new PdfFormatError("the PDF carries files already");

  const stamp = asciiString(`D:${pdfStamp(date)}+00'00'`);
  const tree: { readonly key: string; readonly entry: readonly [PdfString, PdfValue] }[] = [];
  const written: Written[] = [];
  for (const [index, attached] of files.entries()) {
    const content = { number: size + 2 * index, source: contentOf(attached, stamp) };
    const specification = new Map<string, PdfValue>([
      ["Type", { kind: "name", name: "Filespec" }],
      ["F", textString(attached.name)],
      ["UF", textString(attached.name)],
      ["Desc", textString(attached.description)],
      ["EF", new Map([["F", reference(content.number)]])],
    ]);
    const number = content.number + 1;
    written.push(content, { number, source: Buffer.from(writeValue(specification)) });
    const key = textString(attached.name);
    tree.push({ key: key.raw, entry: [key, reference(number)] });
  }
  tree.sort((a, b) => (a.key < b.key ? -1 : 1)); // a name tree is searched by halving: byte order
  const embedded = new Map([["Names", tree.flatMap(({ entry }) => entry)]]);
  const catalog = new Map([
    ...file.catalog,
    ["Version", { kind: "name", name: "1.7" }] as const,
    ["Names", new Map([...(names ?? []), ["EmbeddedFiles", embedded]])] as const,
  ]);
  return append(pdf, file, [{ number: root.number, source: Buffer.from(writeValue(catalog as PdfDict)) }, ...written], size + 2 * files.length);
}

function assertNames(files: readonly Attachment[]): void {
  const seen = new Set<string>();
  for (const { name } of files) {
    if (!isPlainFileName(name)) throw new RangeError(`not a plain file name: ${JSON.stringify(name)}`);
    if (seen.has(name)) throw new RangeError(`two files named ${name}`);
    seen.add(name);
  }
}

function contentOf({ bytes, media }: Attachment, stamp: PdfString): Buffer {
  const params = new Map<string, PdfValue>([
    ["Size", bytes.byteLength],
    ["CheckSum", { kind: "string", raw: createHash("md5").update(bytes).digest().toString("latin1") }], // the format knows no other sum; it guards against damage, not malice
    ["CreationDate", stamp],
    ["ModDate", stamp],
  ]);
  const dict = new Map<string, PdfValue>([
    ["Type", { kind: "name", name: "EmbeddedFile" }],
    ["Subtype", { kind: "name", name: media }],
    ["Params", params],
    ["Length", bytes.byteLength],
  ]);
  return Buffer.concat([Buffer.from(`${writeValue(dict)}\nstream\n`), bytes, Buffer.from("\nendstream")]);
}

function append(pdf: Uint8Array, file: PdfFile, objects: readonly Written[], size: number): Uint8Array {
  const parts: Uint8Array[] = [pdf];
  let length = pdf.byteLength;
  const add = (part: Buffer) => {
    parts.push(part);
    length += part.length;
  };
  add(Buffer.from("\n"));
  const table = objects.map(({ number, source }) => {
    const line = `${number} 1\n${String(length).padStart(10, "0")} 00000 n \n`;
    add(Buffer.concat([Buffer.from(`${number} 0 obj\n`), source, Buffer.from("\nendobj\n")]));
    return line;
  });
  const trailer = new Map([...file.trailer, ["Size", size] as const, ["Prev", file.startXref] as const]);
  const startXref = length;
  add(Buffer.from(`xref\n${table.join("")}trailer\n${writeValue(trailer)}\nstartxref\n${startXref}\n%%EOF\n`));
  return new Uint8Array(Buffer.concat(parts));
}

const reference = (number: number): PdfValue => ({ kind: "ref", number });

const asciiString = (raw: string): PdfString => ({ kind: "string", raw });

// Plain ASCII stays itself; anything else is UTF-16 with its mark.
function textString(text: string): PdfString {
  if (/^[\x20-\x7e]*$/.test(text)) return asciiString(text);
  return { kind: "string", raw: `\xfe\xff${Buffer.from(text, "utf16le").swap16().toString("latin1")}` };
}
