import { readFile } from "node:fs/promises";
import { BURIAL_COVER, CHECKS, type Design, design, type Edition, readJob } from "@branchwork/engine";
import { type AmendmentTargets, basisFrom, type Overlay, readOverlay } from "@branchwork/sheets";

export interface LoadOptions {
  readonly overlay?: string;
  readonly edition?: Edition;
}

export interface Loaded {
  readonly design: Design;
  readonly overlay: Overlay | null;
  readonly targets: AmendmentTargets;
}

interface PlacedIssue {
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
            `${[file, issue.line, issue.column].filter((part) => part !== undefined).join(":")}: ${issue.path ? `${issue.path}: ` : ""}${issue.what}\n    mend: ${issue.mend}`,
        )
        .join("\n"),
    );
  }
}

const MAX_BYTES = 2_000_000;

async function readText(file: string): Promise<string> {
  let bytes: Buffer;
  try {
    bytes = await readFile(file);
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    throw new InputError(file, [
      { path: "", what: code === "ENOENT" ? "there is no such file" : `cannot be read (${code})`, mend: "give the path of a job or overlay file" },
    ]);
  }
  if (bytes.length > MAX_BYTES)
    throw new InputError(file, [{ path: "", what: `larger than ${MAX_BYTES} bytes`, mend: "a job file is a few kilobytes; check that this is one" }]);
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    throw new InputError(file, [{ path: "", what: "not valid UTF-8 text", mend: "save the file as UTF-8" }]);
  }
}

/** What amendments may name: the rows of the cover table and the check ids. */
export const AMENDMENT_TARGETS: AmendmentTargets = {
  cover: Object.fromEntries(Object.entries(BURIAL_COVER.rows).map(([row, cells]) => [row, cells.filter((cell) => cell !== null)])),
  checks: CHECKS.map((check) => check.id),
};

/** Reads a job and an overlay from disk and designs the job. The edition: the option's, else the overlay's, else the job's. */
export async function loadDesign(jobFile: string, options: LoadOptions): Promise<Loaded> {
  const read = readJob(await readText(jobFile));
  if (!read.ok) throw new InputError(jobFile, read.issues);
  let overlay: Overlay | null = null;
  if (options.overlay !== undefined) {
    const reading = readOverlay(await readText(options.overlay));
    if (!reading.ok) throw new InputError(options.overlay, reading.issues);
    overlay = reading.overlay;
  }
  const asked = read.job.code.edition;
  const edition = options.edition ?? overlay?.edition ?? asked;
  const basis = basisFrom(overlay, edition, AMENDMENT_TARGETS);
  if (options.overlay !== undefined && basis.issues.length > 0) throw new InputError(options.overlay, basis.issues);
  const changed =
    edition === asked
      ? []
      : [
          {
            path: "code.edition",
            says: `the job names the ${asked} edition; ${edition} is used, from ${options.edition ? "the command line" : "the overlay"}`,
          },
        ];
  return { design: design({ job: read.job, basis, assumptions: [...read.assumptions, ...changed] }), overlay, targets: AMENDMENT_TARGETS };
}
