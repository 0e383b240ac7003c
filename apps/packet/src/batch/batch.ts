import { readdir } from "node:fs/promises";
import { availableParallelism } from "node:os";
import { join, resolve } from "node:path";
import { performance } from "node:perf_hooks";
import type { Edition } from "@branchwork/engine";
import { readOverlay } from "@branchwork/sheets";
import { dateOf, formatsOf, namedPaper, type PrintDocument, setsOf } from "../build.js";
import { packetFonts } from "../fonts.js";
import { InputError, type NamedText } from "../load-design.js";
import { selfContained } from "../overlay/load-overlay.js";
import { namedPrices } from "../price-book.js";
import type { PrinterPool } from "../print/printer-pool.js";
import { withExit } from "../report.js";
import { oneLine } from "../terminal-text.js";
import { findJobs } from "./find-jobs.js";
import { PACKETS, type Press } from "./make-row.js";
import { programStamp } from "./program-stamp.js";
import { progressOn } from "./progress.js";
import { GrowingReport, printReport, readReport, replaceFile } from "./report-file.js";
import { countRows, exitOf, printCounts, type Row } from "./row.js";
import { runBatch, settle } from "./run-batch.js";
import { lockRun } from "./run-lock.js";
import { isOfShard, readShard } from "./shard.js";
import { stopOnSignals } from "./stop-signals.js";
import { printSummary } from "./summary.js";
import { WriteGate } from "./write-gate.js";

export interface BatchOptions {
  readonly out: string;
  readonly format: string;
  readonly set?: string;
  readonly paper?: string;
  readonly overlay?: string;
  readonly prices?: string;
  readonly edition?: Edition;
  readonly date?: string;
  readonly browser?: string;
  readonly jobs?: string;
  readonly limit: string;
  readonly shard?: string;
  readonly force?: boolean;
  readonly json?: boolean;
}

/** A run ended by SIGINT or SIGTERM before all its jobs were made. */
const INTERRUPTED = 130;
/** A page holds about a gigabyte after some dozens of packets, and half of that when it is replaced this often, at no cost in time. */
export const PRINTS_PER_PAGE = 8;
const TOLD = 10;

/** `batch`: the packets of many jobs, one report. Goes on where an earlier run into the same folder ended. */
export function batch(named: readonly string[], options: BatchOptions): Promise<number> {
  return withExit(async () => {
    const out = resolve(options.out);
    const pages = wholeNumber("--jobs", options.jobs ?? String(availableParallelism()), 64);
    const limit = wholeNumber("--limit", options.limit, 3600);
    const shard = options.shard === undefined ? undefined : readShard(options.shard);
    const prices = await namedPrices(options.prices); // one that cannot be read spoils every job: told once, before any
    const terms = {
      overlay: await overlayOf(options.overlay),
      edition: options.edition,
      date: dateOf(options.date),
      formats: formatsOf(options.format),
      sets: setsOf(options.set),
      paper: namedPaper(options.paper),
      prices: prices?.source,
      program: await programStamp(),
    };
    const found = await findJobs(named, [out, ...[options.overlay, options.prices].filter((file) => file !== undefined)]);
    const jobs = shard ? found.filter(({ name }) => isOfShard(name, shard)) : found;
    await assertOurs(out);
    const suffix = shard ? `-${shard.index}-of-${shard.of}` : "";
    const report = join(out, `report${suffix}.jsonl`);
    const unlock = await lockRun(join(out, `.report${suffix}.lock`));
    const stop = stopOnSignals(() => process.stderr.isTTY && process.stderr.write("\nfinishing what is in hand; once more to end now\n"));
    const printer = lazyPrinter({ pages, limit, ...(options.browser === undefined ? {} : { browser: options.browser }) });
    try {
      const earlier = options.force ? new Map<string, Row>() : await earlierRows(out);
      const standing = await settle(jobs, earlier, { terms, out });
      const growing = await GrowingReport.open(report, standing.values());
      const progress = progressOn(process.stderr, jobs.length - standing.size, performance.now.bind(performance));
      const rows = new Map(standing);
      const press: Press = { terms, prices: () => prices, fonts: await packetFonts(), print: printer.print };
      if (terms.formats.includes("pdf") && standing.size < jobs.length) await printer.open(); // no browser at all is told before any job
      const keep = async (row: Row) => {
        await growing.append(row);
        rows.set(row.job, row);
      };
      const gate = new WriteGate();
      const running = runBatch({
        jobs,
        standing,
        earlier,
        out,
        press,
        lanes: pages + 1, // one is computed while the pages print
        append: keep,
        stopping: () => stop.asked,
        gate,
        tell: progress.tell,
      });
      let failure: { readonly error: unknown } | undefined;
      const whole = running.catch((error: unknown) => {
        failure = { error };
      });
      const ended = await Promise.race([whole, stop.now.then(() => "now" as const)]);
      progress.end();
      if (ended === "now") await gate.close();
      else await growing.close();
      const left = jobs.length - rows.size;
      try {
        await replaceFile(report, printReport(rows.values(), { format: "branchwork-batch-end/1", jobs: jobs.length, done: rows.size }));
        await replaceFile(join(out, `summary${suffix}.html`), printSummary(rows.values(), { date: terms.date, left }));
      } catch (error) {
        failure ??= { error };
      }
      if (failure) throw failure.error;
      const counts = countRows(rows.values());
      const gaveUp = ended !== "now" ? ended?.gaveUp : undefined;
      const made = rows.size - standing.size;
      if (options.json) console.log(JSON.stringify({ format: "branchwork-batch/1", report, jobs: jobs.length, made, unchanged: standing.size, left, counts }));
      else console.log(`${printCounts(counts)}; worked ${made}, unchanged ${standing.size}${left > 0 ? `, left ${left}` : ""}\n${report}`);
      tellWorst(rows.values());
      if (gaveUp !== undefined) console.error(`gave up: ${gaveUp}`);
      const code = left > 0 && gaveUp === undefined ? INTERRUPTED : exitOf(counts);
      if (ended === "now") {
        await unlock();
        process.exit(code); // ends the browser and removes its profile
      }
      return code;
    } finally {
      await printer.close();
      await unlock();
      stop.release();
    }
  });
}

/** An option that is a number from 1 to `most`. */
export function wholeNumber(option: string, text: string, most: number): number {
  const value = Number(text);
  if (!Number.isInteger(value) || value < 1 || value > most)
    throw new InputError(option, [{ path: "", what: `"${text}" is not a number from 1 to ${most}`, mend: "give a whole number" }]);
  return value;
}

/** The overlay with what it extends. One that cannot be read spoils every job: it is told once, before any. */
export async function overlayOf(file: string | undefined): Promise<NamedText | undefined> {
  if (file === undefined) return undefined;
  const overlay = await selfContained(file);
  const reading = readOverlay(overlay.text);
  if (!reading.ok) throw new InputError(file, reading.issues);
  return overlay;
}

// A batch overwrites below its folder, so the folder has to be a batch's.
async function assertOurs(out: string): Promise<void> {
  const names = await readdir(out).catch((error: NodeJS.ErrnoException) => {
    if (error.code === "ENOENT") return [];
    throw new InputError(out, [{ path: "", what: `not a folder that can be read (${error.code})`, mend: "give another --out" }]);
  });
  const others = names.filter((name) => !name.startsWith("."));
  if (others.length > 0 && !others.some((name) => name === PACKETS || /^report.*\.jsonl$/.test(name)))
    throw new InputError(out, [{ path: "", what: "the folder has other things in it and no report of a batch", mend: "give an empty or new folder" }]);
}

/** Rows of every report in the folder: a job's part may be another than last time. */
async function earlierRows(out: string): Promise<Map<string, Row>> {
  const rows = new Map<string, Row>();
  const names = await readdir(out).catch(() => []); // not there yet
  for (const name of names.filter((one) => /^report.*\.jsonl$/.test(one)).sort()) {
    const read = await readReport(join(out, name));
    for (const [job, row] of read?.rows ?? []) if (!rows.has(job) || row.outcome !== "failed") rows.set(job, row);
  }
  return rows;
}

/** A pool that starts its browser when first asked. */
function lazyPrinter({ pages, limit, browser }: { readonly pages: number; readonly limit: number; readonly browser?: string }) {
  let pool: Promise<PrinterPool> | undefined;
  const said = new Set<string>();
  const warn = (message: string) => {
    if (!said.has(message)) console.error(message); // a browser that is replaced says it again
    said.add(message);
  };
  const open = () => {
    pool ??= import("../print/printer-pool.js").then(({ openPrinterPool }) =>
      openPrinterPool({ pages, printsPerPage: PRINTS_PER_PAGE, warn, signals: "program", ...(browser === undefined ? {} : { browser }) }),
    );
    return pool;
  };
  const print: PrintDocument = async (html, options) => (await open()).print(html, { ...options, timeoutMs: limit * 1000 });
  return {
    open,
    print,
    close: async () => {
      const opened = await pool?.catch(() => undefined); // one that did not start was told where it was asked
      // The packets are made: a browser that ended badly, or a profile it still holds, is no fault of theirs.
      await opened?.close().catch((error: unknown) => warn(`the browser could not be cleared away: ${error instanceof Error ? error.message : String(error)}`));
    },
  };
}

function tellWorst(rows: Iterable<Row>): void {
  const worst = [...rows].filter(({ outcome }) => outcome === "failed" || outcome === "bad-input").sort((a, b) => (a.job < b.job ? -1 : 1));
  for (const { job, says, outcome } of worst.slice(0, TOLD))
    console.error(oneLine(`${outcome === "failed" ? "failed" : "bad input"}  ${says[0]?.startsWith(job) ? "" : `${job}: `}${says[0] ?? ""}`));
  if (worst.length > TOLD) console.error(`and ${worst.length - TOLD} more: see the report`);
}
