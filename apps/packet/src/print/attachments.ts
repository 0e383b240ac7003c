import { createHash } from "node:crypto";
import type { Attachment } from "./attach.js";
import { isPlainFileName } from "./attachment-name.js";
import { openPdf, ordinaryLimits, type PdfFile, type PdfLimits } from "./pdf-file.js";
import { isArray, isName, isStream, isString, type PdfDict, PdfFormatError, type PdfValue, pdfText } from "./pdf-value.js";

const maxFiles = 100;
const strangerLimits: PdfLimits = { ...ordinaryLimits, streamBytes: 64 * 2 ** 20, values: 2_000_000 };

/**
 * The files carried inside a PDF, in the order of their names; none is an empty list. The PDF may come from anyone: what is
 * read is bounded (`limits`), and a file whose size or checksum is not as noted is refused.
 * Throws PdfFormatError, naming what is wrong.
 */
export function readAttachments(pdf: Uint8Array, limits: PdfLimits = strangerLimits): Attachment[] {
  const file = openPdf(pdf, limits);
  const specifications: PdfDict[] = [];
  collect(file, file.dict(file.catalog.get("Names"))?.get("EmbeddedFiles"), specifications, new Set(), 0);
  const attached = specifications.map((specification) => read(file, specification));
  const names = new Set(attached.map(({ name }) => name));
  if (names.size !== attached.length) throw new PdfFormatError("the PDF carries two files of one name");
  return attached;
}

function collect(file: PdfFile, value: PdfValue | undefined, found: PdfDict[], seen: Set<PdfDict>, depth: number): void {
  const node = file.dict(value);
  if (!node) return;
  if (seen.has(node) || depth > 16) throw new PdfFormatError("the PDF is damaged: its list of files runs in a circle");
  seen.add(node);
  const pairs = file.resolve(node.get("Names"));
  if (isArray(pairs)) {
    if (found.length + pairs.length / 2 > maxFiles) throw new PdfFormatError(`the PDF carries more than ${maxFiles} files`);
    for (let i = 1; i < pairs.length; i += 2) {
      const specification = file.dict(pairs[i]);
      if (!specification) throw new PdfFormatError("the PDF is damaged: an entry of its list of files is none");
      found.push(specification);
    }
  }
  const kids = file.resolve(node.get("Kids"));
  if (isArray(kids)) for (const kid of kids) collect(file, kid, found, seen, depth + 1);
}

function read(file: PdfFile, specification: PdfDict): Attachment {
  const name = text(file, specification.get("UF")) ?? text(file, specification.get("F"));
  if (name === undefined || !isPlainFileName(name))
    throw new PdfFormatError(`a file in the PDF has a name that is none: ${JSON.stringify(name ?? "").slice(0, 80)}`);
  const places = file.dict(specification.get("EF"));
  const stream = file.resolve(places?.get("F") ?? places?.get("UF"));
  if (!isStream(stream)) throw new PdfFormatError(`the PDF names the file ${name} but does not hold it`);
  const bytes = new Uint8Array(file.read(stream)); // a copy: the PDF's own memory may go
  const params = file.dict(stream.dict.get("Params"));
  const size = file.resolve(params?.get("Size"));
  if (size !== null && size !== bytes.byteLength)
    throw new PdfFormatError(`the file ${name} in the PDF is damaged: ${bytes.byteLength} bytes where it should have ${String(size)}`);
  const sum = file.resolve(params?.get("CheckSum"));
  if (isString(sum) && createHash("md5").update(bytes).digest().toString("latin1") !== sum.raw)
    throw new PdfFormatError(`the file ${name} in the PDF is damaged: its checksum is another`);
  const media = file.resolve(stream.dict.get("Subtype"));
  return { name, bytes, media: isName(media) ? media.name : "application/octet-stream", description: text(file, specification.get("Desc")) ?? "" };
}

function text(file: PdfFile, value: PdfValue | undefined): string | undefined {
  const resolved = file.resolve(value);
  return isString(resolved) ? pdfText(resolved) : undefined;
}
