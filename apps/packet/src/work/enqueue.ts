import { basename } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import type { Edition } from "@branchwork/engine";
import { overlayOf } from "../batch/batch.js";
import { type FoundJob, findJobs } from "../batch/find-jobs.js";
import { readJobBytes } from "../batch/make-row.js";
import { programStamp } from "../batch/program-stamp.js";
import { exitOf, type Outcome, printCounts } from "../batch/row.js";
import { dateOf, formatsOf, namedPaper, setsOf } from "../build.js";
import { InputError, textOf } from "../load-design.js";
import { namedPrices } from "../price-book.js";
import { withExit } from "../report.js";
import { stemOf } from "../stem.js";
import { forTerminal } from "../terminal-text.js";
import { type Answer, assertReachable, connectionOf, isStem, ORDER_OPTIONS, type Order, orderId } from "./packet-queue.js";

export interface EnqueueOptions {
  readonly queue: string;
  readonly name: string;
  readonly format: string;
  readonly set?: string;
  readonly paper?: string;
  readonly overlay?: string;
  readonly prices?: string;
  readonly edition?: Edition;
  readonly date?: string;
  readonly wait?: boolean;
}

/** `enqueue`: puts jobs into a queue, each once however often it is put; prints id and job, tab between. */
export function enqueue(named: readonly string[], options: EnqueueOptions): Promise<number> {
  return withExit(async () => {
    const connection = connectionOf(options.queue);
    const overlay = await overlayOf(options.overlay);
    const prices = (await namedPrices(options.prices))?.source;
    const terms = {
      overlay: overlay && { ...overlay, file: basename(overlay.file) },
      edition: options.edition,
      date: dateOf(options.date),
      formats: formatsOf(options.format),
      sets: setsOf(options.set),
      paper: namedPaper(options.paper),
      prices: prices && { ...prices, file: basename(prices.file) },
      program: await programStamp(),
    };
    const jobs = await findJobs(
      named,
      [options.overlay, options.prices].filter((file) => file !== undefined),
    );
    await assertReachable(connection);
    const { Queue } = await import("bullmq");
    const queue = new Queue<Order, Answer>(options.name, { connection });
    queue.on("error", () => undefined); // a lost connection is found again; a command that stays without answer throws
    try {
      const ids = new Set<string>();
      let wrong = 0;
      for (const job of jobs) {
        const order = await orderOf(job, terms);
        if (order === undefined) {
          wrong += 1;
          continue;
        }
        const id = orderId(order);
        await queue.add("packet", order, { ...ORDER_OPTIONS, jobId: id });
        const there = await queue.getJob(id);
        if ((await there?.getState()) === "failed") await there?.retry("failed"); // given up earlier, asked for again
        ids.add(id);
        console.log(`${id}\t${job.name}`);
      }
      if (!options.wait) return wrong > 0 ? 2 : 0;
      const counts = { ready: 0, findings: 0, "bad-input": wrong, failed: 0 };
      for (const id of ids) counts[await outcomeOf(id)] += 1;
      console.error(printCounts(counts));
      return exitOf(counts);
    } finally {
      await queue.close();
    }

    async function outcomeOf(id: string): Promise<Outcome> {
      for (;;) {
        const job = await queue.getJob(id);
        if (!job) return "failed"; // taken out of the queue by someone
        const state = await job.getState();
        if (state === "completed") return (job.returnvalue ?? (await queue.getJob(id))?.returnvalue)?.outcome ?? "failed";
        if (state === "failed") {
          console.error(`failed  ${job.data.stem}: ${job.failedReason}`);
          return "failed";
        }
        await sleep(500);
      }
    }
  });
}

/** Undefined, and told, when the file cannot be one. */
async function orderOf(job: FoundJob, terms: Omit<Order, "format" | "stem" | "job">): Promise<Order | undefined> {
  try {
    const stem = stemOf(job.name);
    if (!isStem(stem) || /[\\\p{Cc}]/u.test(job.name))
      throw new InputError(job.name, [{ path: "", what: "a backslash or control character in the name", mend: "rename the file or its folder" }]);
    const text = textOf(job.name, await readJobBytes(job));
    return { format: "branchwork-order/1", stem, job: text, ...terms };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    console.error(forTerminal(error.message));
    return undefined;
  }
}
