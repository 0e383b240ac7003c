import type { FoundJob } from "./find-jobs.js";
import { type Made, makeRow, type Press, stands } from "./make-row.js";
import { type Counts, countRows, type Row } from "./row.js";
import type { WriteGate } from "./write-gate.js";

/** A batch at work. */
export interface BatchRun {
  /** Rows that stand, from earlier runs and this one. */
  readonly rows: ReadonlyMap<string, Row>;
  /** Jobs made by this run. */
  readonly made: number;
  /** Why the run gave up before its end. */
  readonly gaveUp: string | undefined;
}

/** In how many jobs in a row the machine may be at fault before a run gives up: a full disk fails the other thousands too. */
const MACHINE_FAULTS = 5;
const READERS = 8;

/** Which earlier rows stand. Reads every job and every file of its packet. */
export async function settle(
  jobs: readonly FoundJob[],
  earlier: ReadonlyMap<string, Row>,
  given: Pick<Press, "terms"> & { readonly out: string },
): Promise<Map<string, Row>> {
  const standing = new Map<string, Row>();
  const queue = jobs.filter((job) => earlier.has(job.name)).values();
  await Promise.all(
    Array.from({ length: READERS }, async () => {
      for (const job of queue) {
        const row = earlier.get(job.name);
        if (row && (await stands(job, row, given))) standing.set(job.name, row);
      }
    }),
  );
  return standing;
}

/**
 * Makes the jobs that have no standing row, `lanes` at a time. `append` keeps a row; when it throws, the run ends with that
 * error after the jobs in hand. `stopping` is asked before each job.
 */
export async function runBatch(given: {
  readonly jobs: readonly FoundJob[];
  readonly standing: ReadonlyMap<string, Row>;
  readonly earlier: ReadonlyMap<string, Row>;
  readonly out: string;
  readonly lanes: number;
  readonly press: Press;
  readonly append: (row: Row) => Promise<void>;
  readonly stopping: () => boolean;
  readonly gate: WriteGate;
  readonly tell: (made: number, counts: Counts) => void;
}): Promise<BatchRun> {
  const rows = new Map(given.standing);
  const counts = { ...countRows(rows.values()) };
  const queue = given.jobs.filter((job) => !rows.has(job.name)).values();
  let made = 0;
  let faults: Made[] = [];
  let gaveUp: string | undefined;
  let broken: { readonly error: unknown } | undefined;
  async function lane(): Promise<void> {
    for (let next = nextJob(); next !== undefined; next = nextJob()) {
      const one = await makeRow(next, { ...given.press, out: given.out, gate: given.gate, previous: given.earlier.get(next.name) });
      faults = one.machine ? [...faults, one] : [];
      if (faults.length >= MACHINE_FAULTS) gaveUp ??= `${faults.length} jobs in a row failed for the machine: ${one.row.says[0] ?? ""}`;
      try {
        await given.append(one.row);
      } catch (error) {
        broken ??= { error };
        return;
      }
      rows.set(one.row.job, one.row);
      counts[one.row.outcome] += 1;
      made += 1;
      given.tell(made, counts);
    }
  }
  function nextJob(): FoundJob | undefined {
    return given.stopping() || gaveUp !== undefined || broken ? undefined : queue.next().value;
  }
  await Promise.all(Array.from({ length: given.lanes }, lane));
  if (broken) throw broken.error;
  return { rows, made, gaveUp };
}
