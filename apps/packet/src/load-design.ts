import { type Design, design, type Edition, readJob } from "@branchwork/engine";
import { type AmendmentTargets, basisFrom, ENGINE_TARGETS, nearest, type Overlay, readOverlay } from "@branchwork/sheets";
import { selfContained } from "./overlay/load-overlay.js";
import { readBounded, UnreadableError } from "./read-bounded.js";
import { oneLine } from "./terminal-text.js";

export interface LoadOptions {
  readonly overlay?: string;
  readonly edition?: Edition;
}

export interface Loaded {
  readonly design: Design;
  readonly overlay: Overlay | null;
  readonly targets: AmendmentTargets;
  /** What it was read from. */
  readonly sources: { readonly job: NamedText; readonly overlay?: NamedText };
}

interface PlacedIssue {
  /** Where it is another file than the one that was asked for. */
  readonly file?: string;
  readonly line?: number;
  readonly column?: number;
  readonly path: string;
  readonly what: string;
  readonly mend: string;
}

/** Bad input: every issue with its file, line, column, path, what and how to mend. */
export class InputError extends Error {
  override readonly name = "InputError";
  constructor(
    readonly file: string,
    readonly issues: readonly PlacedIssue[],
  ) {
    super(
      issues
        .map(
          (issue) =>
            `${[oneLine(issue.file ?? file), issue.line, issue.column].filter((part) => part !== undefined).join(":")}: ${issue.path ? `${issue.path}: ` : ""}${issue.what}\n    mend: ${issue.mend}`,
        )
        .join("\n"),
    );
  }
}

const MAX_BYTES = 2_000_000;

/** The text of a job or overlay file. Throws InputError when there is none that can be one. */
export async function readText(file: string): Promise<string> {
  let bytes: Uint8Array;
  try {
    bytes = await readBounded(file, MAX_BYTES);
  } catch (error) {
    if (!(error instanceof UnreadableError)) throw error;
    throw new InputError(file, [{ path: "", what: error.message, mend: "give the path of a job or overlay file" }]);
  }
  return textOf(file, bytes);
}

/** Bytes as a job's or overlay's text; `file` is named in the message. */
export function textOf(file: string, bytes: Uint8Array): string {
  if (bytes.length > MAX_BYTES)
    throw new InputError(file, [{ path: "", what: `larger than ${MAX_BYTES} bytes`, mend: "a job file is a few kilobytes; check that this is one" }]);
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    const mend = "save the file as UTF-8; letters with accents show whether it is";
    throw new InputError(file, [{ ...placeOfSpoilt(bytes), path: "", what: "not valid UTF-8 text", mend }]);
  }
}

/** Line and column, in bytes, of the first byte that is no UTF-8. */
function placeOfSpoilt(bytes: Uint8Array): { readonly line: number; readonly column: number } {
  const again = Buffer.from(new TextDecoder("utf-8", { ignoreBOM: true }).decode(bytes));
  const differ = again.findIndex((byte, i) => byte !== bytes[i]);
  const before = Buffer.from(bytes.subarray(0, Math.max(0, differ)))
    .toString("latin1")
    .split("\n");
  return { line: before.length, column: (before.at(-1) ?? "").length + 1 };
}

/** Reads a job and an overlay from disk and designs the job. The edition: the option's, else the overlay's, else the job's. */
export async function loadDesign(jobFile: string, options: LoadOptions): Promise<Loaded> {
  const job = { file: jobFile, text: await readText(jobFile) };
  const overlay = options.overlay === undefined ? undefined : await selfContained(options.overlay);
  return designText({ job, overlay, edition: options.edition });
}

/** A text and the name it goes by in messages. */
export interface NamedText {
  readonly file: string;
  readonly text: string;
}

/** As loadDesign, from texts at hand. */
export function designText(given: { readonly job: NamedText; readonly overlay?: NamedText | undefined; readonly edition?: Edition | undefined }): Loaded {
  const read = readJob(given.job.text);
  if (!read.ok) throw new InputError(given.job.file, read.issues);
  let overlay: Overlay | null = null;
  let lineOf = (path: string): { readonly line?: number; readonly column?: number; readonly path: string } => ({ path });
  if (given.overlay !== undefined) {
    const reading = readOverlay(given.overlay.text);
    if (!reading.ok) throw new InputError(given.overlay.file, reading.issues);
    overlay = reading.overlay;
    lineOf = (path) => {
      const { line, column } = nearest(reading.placed, path.split("."));
      return { line, column, path };
    };
  }
  const asked = read.job.code.edition;
  const edition = given.edition ?? overlay?.edition ?? asked;
  const basis = basisFrom(overlay, edition);
  if (given.overlay !== undefined && basis.issues.length > 0)
    throw new InputError(
      given.overlay.file,
      basis.issues.map((issue) => ({ ...issue, ...lineOf(issue.path) })),
    );
  const changed =
    edition === asked
      ? []
      : [
          {
            path: "code.edition",
            says: `the job names the ${asked} edition; ${edition} is used, from ${given.edition ? "the command line" : "the overlay"}`,
          },
        ];
  return {
    design: design({ job: read.job, basis, assumptions: [...read.assumptions, ...changed] }),
    overlay,
    targets: ENGINE_TARGETS,
    sources: { job: given.job, ...(given.overlay === undefined ? {} : { overlay: given.overlay }) },
  };
}
