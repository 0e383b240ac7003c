import { basename, dirname, join, relative, resolve, sep } from "node:path";
import { dateOf } from "../build.js";
import { InputError } from "../load-design.js";
import { withExit } from "../report.js";
import { printReport, type ReadReport, readReport, replaceFile } from "./report-file.js";
import { countRows, exitOf, printCounts, type Row } from "./row.js";
import { printSummary } from "./summary.js";

export interface MergeOptions {
  readonly out: string;
  readonly date?: string;
  readonly json?: boolean;
}

/** A merged report that lacks jobs is no basis for "all ready". */
const INCOMPLETE = 3;

/** `batch-merge`: one report of several. Of two rows of one job the later named stands, but none that failed over one that did not. */
export function batchMerge(paths: readonly string[], options: MergeOptions): Promise<number> {
  return withExit(async () => {
    const out = resolve(options.out);
    const date = dateOf(options.date);
    const reports = await Promise.all(paths.map(async (path) => ({ path, read: await given(path) })));
    const lacking = [...missingParts(paths), ...reports.flatMap(({ path, read }) => unfinished(path, read))];
    const rows = new Map<string, Row>();
    for (const { path, read } of reports)
      for (const [job, row] of read.rows)
        if (!rows.has(job) || row.outcome !== "failed") rows.set(job, { ...row, folder: moved(row.folder, { from: dirname(resolve(path)), to: out }) });
    const left = reports.reduce((sum, { read }) => sum + (read.end ? read.end.jobs - read.end.done : 0), 0);
    const report = join(out, "report.jsonl");
    const end = lacking.length === 0 ? { format: "branchwork-batch-end/1" as const, jobs: rows.size, done: rows.size } : undefined;
    await replaceFile(report, printReport(rows.values(), end));
    await replaceFile(join(out, "summary.html"), printSummary(rows.values(), { date, left }));
    const counts = countRows(rows.values());
    if (options.json) console.log(JSON.stringify({ format: "branchwork-batch/1", report, jobs: rows.size, lacking, counts }));
    else console.log(`${printCounts(counts)}\n${report}`);
    for (const line of lacking) console.error(line);
    return lacking.length > 0 ? INCOMPLETE : exitOf(counts);
  });
}

async function given(path: string): Promise<ReadReport> {
  const read = await readReport(path);
  if (!read) throw new InputError(path, [{ path: "", what: "there is no such report", mend: "give the report*.jsonl of each part" }]);
  return read;
}

function unfinished(path: string, { end, torn }: ReadReport): string[] {
  if (!end) return [`${path}: the run that wrote it did not come to its end${torn > 0 ? ` (${torn} torn lines)` : ""}; run it again`];
  return end.done < end.jobs ? [`${path}: ${end.jobs - end.done} jobs are left; run it again`] : [];
}

/** The parts that no report is given of, by the reports' names. */
function missingParts(paths: readonly string[]): string[] {
  const parts = paths.flatMap((path) => {
    const [, index, of] = (/^report-(\d+)-of-(\d+)\.jsonl$/.exec(basename(path)) ?? []).map(Number);
    return index === undefined || of === undefined ? [] : [{ index, of }];
  });
  return [...new Set(parts.map(({ of }) => of))].flatMap((of) =>
    Array.from({ length: of }, (_, i) => i + 1)
      .filter((index) => !parts.some((part) => part.of === of && part.index === index))
      .map((index) => `part ${index} of ${of} has no report here`),
  );
}

function moved(folder: string, { from, to }: { readonly from: string; readonly to: string }): string {
  return relative(to, join(from, ...folder.split("/")))
    .split(sep)
    .join("/");
}
