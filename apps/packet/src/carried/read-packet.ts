import { EDITIONS, type Edition } from "@branchwork/engine";
import { InputError } from "../load-design.js";
import type { Attachment } from "../print/attach.js";
import { readAttachments } from "../print/attachments.js";
import { PdfFormatError } from "../print/pdf-value.js";
import { readBounded, UnreadableError } from "../read-bounded.js";
import { type Manifest, manifestSchema, NAMES } from "./carried-files.js";

export interface ReadPacket {
  readonly pdf: Uint8Array;
  readonly manifest: Manifest;
  readonly job: string;
  readonly overlay: string | null;
  readonly prices: string | null;
  readonly design: string;
  /** What the marked revision was compared with; null in a packet without one. */
  readonly was: { readonly job: string; readonly overlay: string | null } | null;
}

const MOST_BYTES = 256 * 2 ** 20;

const PDF_MARK = "%PDF-";

/** Whether a file begins as a PDF does; one that cannot be read does not. */
export async function isPdf(file: string): Promise<boolean> {
  try {
    return Buffer.from(await readBounded(file, PDF_MARK.length - 1)).toString("latin1") === PDF_MARK;
  } catch (error) {
    if (error instanceof UnreadableError) return false;
    throw error;
  }
}

/** The edition of a manifest, where it names one there is. */
export const editionOf = (name: string | undefined): Edition | undefined => EDITIONS.find((edition) => edition === name);

/** A packet PDF with the files it carries. Throws InputError for anything that is not one. */
export async function readPacket(file: string): Promise<ReadPacket> {
  const refuse = (what: string, mend = "give a packet PDF that build wrote, as it wrote it"): never => {
    throw new InputError(file, [{ path: "", what, mend }]);
  };
  let pdf: Uint8Array;
  try {
    pdf = await readBounded(file, MOST_BYTES);
  } catch (error) {
    if (error instanceof UnreadableError) return refuse(error.message);
    throw error;
  }
  if (pdf.length > MOST_BYTES) return refuse(`larger than ${MOST_BYTES} bytes`);
  let carried: readonly Attachment[];
  try {
    carried = readAttachments(pdf);
  } catch (error) {
    if (error instanceof PdfFormatError) return refuse(error.message);
    throw error;
  }
  const textOf = (name: string): string => {
    const found = carried.find((one) => one.name === name);
    return found === undefined ? refuse(`it carries no ${name}`) : new TextDecoder("utf-8", { fatal: false }).decode(found.bytes);
  };
  let plain: unknown;
  try {
    plain = JSON.parse(textOf(NAMES.manifest));
  } catch (error) {
    if (error instanceof SyntaxError) return refuse(`its ${NAMES.manifest} is not JSON`);
    throw error;
  }
  const manifest = manifestSchema.safeParse(plain);
  if (!manifest.success) return refuse(`its ${NAMES.manifest} is not of this format: ${manifest.error.issues[0]?.message ?? "unknown"}`);
  return {
    pdf,
    manifest: manifest.data,
    job: textOf(manifest.data.job),
    overlay: manifest.data.overlay === undefined ? null : textOf(manifest.data.overlay),
    prices: manifest.data.prices === undefined ? null : textOf(manifest.data.prices),
    design: textOf(NAMES.design),
    was:
      manifest.data.was === undefined
        ? null
        : { job: textOf(manifest.data.was.job), overlay: manifest.data.was.overlay === undefined ? null : textOf(manifest.data.was.overlay) },
  };
}
