import { design, type Edition, readJob } from "@branchwork/engine";
import { basisFrom, compareForJob, compareOverlays, composePacket, type FieldChange, type JobComparison } from "@branchwork/sheets";
import { EXIT } from "../exit-codes.js";
import { InputError, readText } from "../load-design.js";
import { withExit } from "../report.js";
import { dayOf } from "./day.js";
import { type LoadedOverlay, overlayOrThrow } from "./load-overlay.js";

export interface DiffOptions {
  readonly job?: string;
  readonly date?: string;
  readonly json?: boolean;
}

/** `overlay diff`: fields that differ, and with a job what that changes: findings, fees, sheets and statements. */
export function diffOverlays(a: string, b: string, options: DiffOptions): Promise<number> {
  return withExit(async () => {
    const date = dayOf(options.date);
    const [before, after] = [await overlayOrThrow(a), await overlayOrThrow(b)];
    const fields = compareOverlays(before.placed, after.placed);
    const job = options.job === undefined ? null : compareForJob(await sideOf(before, options.job, date), await sideOf(after, options.job, date), date);
    if (options.json) console.log(JSON.stringify({ format: "branchwork-overlay-diff/1", before: a, after: b, date, fields, job }, null, 2));
    else console.log([...fields.map(fieldLine), ...(job === null ? [] : jobLines(job))].join("\n") || "no difference");
    return EXIT.ready;
  });
}

async function sideOf({ overlay }: LoadedOverlay, jobFile: string, date: string) {
  const read = readJob(await readText(jobFile));
  if (!read.ok) throw new InputError(jobFile, read.issues);
  const edition: Edition = overlay.edition ?? read.job.code.edition;
  const made = design({ job: read.job, basis: basisFrom(overlay, edition), assumptions: read.assumptions });
  const sheets = composePacket({ design: made, overlay, date }).sheets.map((sheet) => sheet.title);
  return { overlay, design: made, sheets };
}

const shown = (value: unknown) => (value === undefined ? "nothing" : JSON.stringify(value));
const fieldLine = ({ path, before, after }: FieldChange) => `${path}: ${shown(before)} → ${shown(after)}`;

function jobLines(job: JobComparison): readonly string[] {
  const said = (what: string, { only_before, only_after }: { readonly only_before: readonly string[]; readonly only_after: readonly string[] }) => [
    ...only_before.map((text) => `- ${what}: ${text}`),
    ...only_after.map((text) => `+ ${what}: ${text}`),
  ];
  return [
    "",
    `For this job: ${job.ready[0] ? "ready" : "not ready"} → ${job.ready[1] ? "ready" : "not ready"}; fees $${job.fees.before} → $${job.fees.after}`,
    ...job.findings.map(({ check, subject, before, after }) => `${check}, ${subject}: ${before ?? "nothing"} → ${after ?? "nothing"}`),
    ...job.fees.lines.map((line) => `fee ${fieldLine(line)}`),
    ...job.sheets.only_before.map((title) => `- the submittal no longer has the sheet "${title}"`),
    ...job.sheets.only_after.map((title) => `+ the submittal has a further sheet, "${title}"`),
    ...said("statement", job.statements),
  ];
}
