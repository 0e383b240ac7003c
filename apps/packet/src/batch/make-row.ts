import { readFile, rm } from "node:fs/promises";
import { join } from "node:path";
import type { Finding } from "@branchwork/engine";
import type { Fonts } from "@branchwork/sheets";
import { type PrintDocument, packetFiles } from "../build.js";
import { designText, InputError, textOf } from "../load-design.js";
import type { Prices } from "../price-book.js";
import { type OutputFile, writeWhole } from "../print/atomic-write.js";
import { EnvironmentError } from "../print/environment-error.js";
import { PrintError } from "../print/print-error.js";
import { readBounded, UnreadableError } from "../read-bounded.js";
import { stemOf } from "../stem.js";
import type { FoundJob } from "./find-jobs.js";
import { packetDigest, sha256, type Terms } from "./packet-digest.js";
import { removeLeftovers } from "./report-file.js";
import type { Row, WrittenFile } from "./row.js";
import type { WriteGate } from "./write-gate.js";

/** The folder of the packets below a batch's output. */
export const PACKETS = "packets";

/** A job's packet below a batch's output. */
export const packetFolder = (out: string, { folder }: FoundJob) => join(out, PACKETS, ...folder.split("/"));

/** What makes packets. */
export interface Press {
  readonly terms: Terms;
  /** The price book of the terms, read. Asked within a job: a book that cannot be read is that job's bad input. */
  readonly prices: () => Prices | undefined;
  readonly fonts: Fonts;
  readonly print: PrintDocument;
}

/** A packet in memory, with what is said of it. */
export interface Pressed {
  readonly outcome: "ready" | "findings" | "bad-input";
  readonly files: readonly OutputFile[];
  readonly says: readonly string[];
}

const MOST_SAYS = 50;

/** Designs, composes and prints one job's text. Bad input is an outcome; a lacking machine and a document that cannot be printed throw. */
export async function press(
  given: { readonly name: string; readonly stem: string; readonly bytes: Uint8Array },
  { terms, prices: read, fonts, print }: Press,
): Promise<Pressed> {
  try {
    const loaded = designText({ job: { file: given.name, text: textOf(given.name, given.bytes) }, overlay: terms.overlay, edition: terms.edition });
    const { date, edition, formats, sets, paper } = terms;
    const prices = read();
    const files = await packetFiles({
      name: given.stem,
      loaded,
      date,
      edition,
      formats,
      sets,
      ...(paper === undefined ? {} : { paper }),
      ...(prices === undefined ? {} : { prices }),
      fonts,
      print,
    });
    const fails = loaded.design.findings.filter((finding) => finding.verdict === "fail");
    return { outcome: loaded.design.ready ? "ready" : "findings", files, says: fails.map(sayFinding).slice(0, MOST_SAYS) };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return { outcome: "bad-input", files: [], says: sayIssues(error) };
  }
}

function sayFinding(finding: Finding): string {
  const section = finding.citation ? ` [${finding.citation.section}]` : "";
  return `${finding.subject}: ${finding.says}${section}${"mend" in finding ? `; mend: ${finding.mend}` : ""}`;
}

function sayIssues({ file, issues }: InputError): string[] {
  return issues
    .map(
      ({ line, column, path, what, mend }) =>
        `${[file, line, column].filter((part) => part !== undefined).join(":")}: ${path ? `${path}: ` : ""}${what}; mend: ${mend}`,
    )
    .slice(0, MOST_SAYS);
}

/** The files of a packet as a row has them. */
export function written(files: readonly OutputFile[]): WrittenFile[] {
  return files.map(({ name, bytes }) => ({ name, bytes: Buffer.byteLength(bytes), sha256: sha256(bytes) }));
}

/** What a made job is: its row, and whether the machine was at fault when it failed. */
export interface Made {
  readonly row: Row;
  readonly machine: boolean;
}

/** Makes one job of a batch into its folder. Never throws: what goes wrong with one job is its row. */
export async function makeRow(
  job: FoundJob,
  given: Press & { readonly out: string; readonly previous: Row | undefined; readonly gate: WriteGate },
): Promise<Made> {
  const row = {
    format: "branchwork-batch-row/1",
    job: job.name,
    digest: null as string | null,
    folder: `${PACKETS}/${job.folder}`,
    files: [] as WrittenFile[],
  } as const;
  const folder = packetFolder(given.out, job);
  try {
    if (/[\\\p{Cc}]/u.test(job.name))
      throw new InputError(job.name, [{ path: "", what: "the path has a backslash or a control character in it", mend: "rename the file or its folder" }]);
    stemOf(job.name);
    const bytes = await readJobBytes(job);
    const digest = packetDigest(bytes, given.terms);
    const { outcome, files, says } = await press({ name: job.name, stem: job.stem, bytes }, given);
    await given.gate.through(async () => {
      await removeLeftovers(folder, (name) => name.startsWith(`${job.stem}.`) || name.startsWith(`${job.stem}-`));
      if (files.length > 0) await writeWhole(folder, files, { force: true });
      // What an earlier packet had and this one has not would pass for part of it.
      for (const { name } of given.previous?.files ?? [])
        if (isPlain(name) && !files.some((file) => file.name === name)) await rm(join(folder, name), { force: true });
    });
    return { row: { ...row, digest, outcome, files: written(files), says }, machine: false };
  } catch (error) {
    if (error instanceof InputError) return { row: { ...row, outcome: "bad-input", says: sayIssues(error) }, machine: false };
    const known = error instanceof EnvironmentError || error instanceof PrintError;
    const says = known
      ? error.message.replace(/\s*\n\s*/g, "; ")
      : `a fault of the program: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`;
    return { row: { ...row, outcome: "failed", says: [says] }, machine: error instanceof EnvironmentError };
  }
}

const isPlain = (name: string) => !/[/\\\0]/.test(name) && name !== ".." && name !== ".";

const MOST_BYTES = 2_000_000;

/** The bytes of a job file. A pipe or a device is refused: reading it could last for ever. A file too large is read as far as that shows. */
export async function readJobBytes({ path, name }: Pick<FoundJob, "path" | "name">): Promise<Uint8Array> {
  try {
    return await readBounded(path, MOST_BYTES);
  } catch (error) {
    if (!(error instanceof UnreadableError)) throw error;
    throw new InputError(name, [{ path: "", what: error.message, mend: "look where the path or link leads and at its permissions" }]);
  }
}

/** Whether a job's row still stands: same digest, not failed, every file there with its content. */
export async function stands(job: FoundJob, row: Row, given: { readonly terms: Terms; readonly out: string }): Promise<boolean> {
  if (row.outcome === "failed" || row.digest === null || row.folder !== `${PACKETS}/${job.folder}`) return false;
  try {
    if (packetDigest(await readJobBytes(job), given.terms) !== row.digest) return false;
    for (const file of row.files) {
      if (!isPlain(file.name)) return false;
      const bytes = await readFile(join(packetFolder(given.out, job), file.name));
      if (bytes.length !== file.bytes || sha256(bytes) !== file.sha256) return false;
    }
    return true;
  } catch {
    return false; // made anew, where what is wrong is told
  }
}
