/** How a job came out, from best to worst. */
export const OUTCOMES = ["ready", "findings", "bad-input", "failed"] as const;
export type Outcome = (typeof OUTCOMES)[number];

/** A file of a packet as it was written. */
export interface WrittenFile {
  readonly name: string;
  readonly bytes: number;
  readonly sha256: string;
}

/** One job in a report. The same job under the same terms gives the same row. */
export interface Row {
  readonly format: "branchwork-batch-row/1";
  readonly job: string;
  /** See packetDigest; null when the job could not be read. */
  readonly digest: string | null;
  readonly outcome: Outcome;
  /** The packet's folder, from the report's folder, with "/" between. */
  readonly folder: string;
  readonly files: readonly WrittenFile[];
  /** What fails, what is wrong with the input, or why there is no packet. */
  readonly says: readonly string[];
}

/** The last line of a report: how many jobs the run was given, and how many of them have a row. */
export interface EndLine {
  readonly format: "branchwork-batch-end/1";
  readonly jobs: number;
  readonly done: number;
}

export type Counts = Readonly<Record<Outcome, number>>;

/** How many came out which way. */
export function countRows(rows: Iterable<Row>): Counts {
  const counts = { ready: 0, findings: 0, "bad-input": 0, failed: 0 };
  for (const { outcome } of rows) counts[outcome] += 1;
  return counts;
}

/** The exit code of a batch: 0 all ready, 1 findings, 2 bad input, 3 failed; the worst wins. */
export function exitOf(counts: Counts): number {
  return Math.max(...OUTCOMES.map((outcome, code) => (counts[outcome] > 0 ? code : 0)));
}

/** Counts in words, for one line. */
export function printCounts(counts: Counts): string {
  return `ready ${counts.ready}, findings ${counts.findings}, bad input ${counts["bad-input"]}, failed ${counts.failed}`;
}
