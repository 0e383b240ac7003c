import { randomBytes } from "node:crypto";
import { type FileHandle, mkdir, open, readdir, readFile, rename, rm } from "node:fs/promises";
import { basename, dirname, join } from "node:path";
import { EnvironmentError } from "../print/environment-error.js";
import { type EndLine, OUTCOMES, type Row } from "./row.js";

/** What a report says. */
export interface ReadReport {
  /** By job; of two rows of one job the later stands. */
  readonly rows: ReadonlyMap<string, Row>;
  /** Present when the run that wrote it came to its end or was stopped in order. */
  readonly end: EndLine | undefined;
  /** Lines that are not rows: a run was killed while it wrote. */
  readonly torn: number;
}

/** Reads a report; undefined when there is none. */
export async function readReport(path: string): Promise<ReadReport | undefined> {
  let text: string;
  try {
    text = await readFile(path, "utf8");
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "ENOENT") return undefined;
    throw lacking(path, error);
  }
  const rows = new Map<string, Row>();
  let end: EndLine | undefined;
  let torn = 0;
  for (const line of text.split("\n").filter((one) => one !== "")) {
    const value = lineOf(line);
    if (value === undefined) torn += 1;
    else if (value.format === "branchwork-batch-end/1") end = value;
    else {
      rows.set(value.job, value);
      end = undefined;
    }
  }
  return { rows, end, torn };
}

function lineOf(line: string): Row | EndLine | undefined {
  let value: Partial<Omit<Row, "format"> & Omit<EndLine, "format">> & { readonly format?: unknown };
  try {
    value = JSON.parse(line) ?? {};
  } catch {
    return undefined; // counted as torn
  }
  if (value.format === "branchwork-batch-end/1" && Number.isInteger(value.jobs) && Number.isInteger(value.done)) return value as unknown as EndLine;
  const isRow =
    value.format === "branchwork-batch-row/1" &&
    typeof value.job === "string" &&
    (value.digest === null || typeof value.digest === "string") &&
    OUTCOMES.includes(value.outcome as Row["outcome"]) &&
    typeof value.folder === "string" &&
    isList(value.files, (file) => typeof file?.name === "string" && typeof file.sha256 === "string" && typeof file.bytes === "number") &&
    isList(value.says, (text) => typeof text === "string");
  return isRow ? (value as Row) : undefined;
}

const isList = <T>(list: readonly T[] | undefined, holds: (one: T) => boolean) => Array.isArray(list) && list.every(holds);

/** Rows, sorted by job, and the end line when given, as the text of a report. */
export function printReport(rows: Iterable<Row>, end?: EndLine): string {
  const sorted = [...rows].sort((a, b) => (a.job < b.job ? -1 : a.job > b.job ? 1 : 0));
  return [...sorted, ...(end ? [end] : [])].map((line) => `${JSON.stringify(line)}\n`).join("");
}

/** A report that grows row by row: what was appended outlives a kill. */
export class GrowingReport {
  private last: Promise<void> = Promise.resolve();
  private constructor(
    private readonly path: string,
    private readonly file: FileHandle,
  ) {}

  /** Starts it with rows that stand already. */
  static async open(path: string, rows: Iterable<Row>): Promise<GrowingReport> {
    await replaceFile(path, printReport(rows));
    return new GrowingReport(path, await open(path, "a"));
  }

  /** Resolves when the row is on disk. One row after another, so that none is torn by the next. */
  append(row: Row): Promise<void> {
    this.last = this.last.then(async () => {
      try {
        await this.file.writeFile(`${JSON.stringify(row)}\n`);
        await this.file.datasync();
      } catch (error) {
        throw lacking(this.path, error);
      }
    });
    this.last.catch(() => undefined); // the caller has the same promise
    return this.last;
  }

  async close(): Promise<void> {
    await this.last.catch(() => undefined); // told to whoever appended
    await this.file.close();
  }
}

/** Puts a file in place of the one there, at no moment neither. */
export async function replaceFile(path: string, text: string): Promise<void> {
  const folder = dirname(path);
  const fresh = join(folder, `.${basename(path)}.${randomBytes(6).toString("hex")}.new`);
  try {
    await mkdir(folder, { recursive: true });
    await removeLeftovers(folder, (of) => of === basename(path));
    const file = await open(fresh, "wx");
    try {
      await file.writeFile(text);
      await file.sync();
    } finally {
      await file.close();
    }
    await rename(fresh, path);
  } catch (error) {
    await rm(fresh, { force: true }).catch(() => undefined); // the first error is the one to report
    throw lacking(path, error);
  }
}

/** Removes what a killed run left under temporary names in a folder, for the files chosen. */
export async function removeLeftovers(folder: string, ofFile: (name: string) => boolean): Promise<void> {
  const names = await readdir(folder).catch((error: NodeJS.ErrnoException) => {
    if (error.code === "ENOENT") return [];
    throw lacking(folder, error);
  });
  for (const name of names) {
    const [, of] = /^\.(.+)\.[0-9a-f]{12}\.(?:new|old)$/.exec(name) ?? [];
    if (of !== undefined && ofFile(of)) await rm(join(folder, name), { force: true });
  }
}

function lacking(path: string, error: unknown): unknown {
  if (!(error instanceof Error) || typeof (error as NodeJS.ErrnoException).code !== "string") return error;
  return new EnvironmentError(`${path} cannot be used: ${error.message}`, {
    hint: "free space, mend permissions or choose another output folder",
    cause: error,
  });
}
