import { availableParallelism } from "node:os";
import { resolve } from "node:path";
import { PRINTS_PER_PAGE, wholeNumber } from "../batch/batch.js";
import { programStamp } from "../batch/program-stamp.js";
import { stopOnSignals } from "../batch/stop-signals.js";
import { dateOf } from "../build.js";
import { packetFonts } from "../fonts.js";
import { openPrinterPool } from "../print/printer-pool.js";
import { withExit } from "../report.js";
import { fillOrder, prepareOut } from "./fill-order.js";
import { type Answer, assertReachable, connectionOf, type Order, orderId, readOrder } from "./packet-queue.js";

export interface WorkOptions {
  readonly queue: string;
  readonly name: string;
  readonly out: string;
  readonly jobs?: string;
  readonly limit: string;
  readonly lock: string;
  readonly browser?: string;
}

/** How long a worker that starts waits for a Redis that is just being started itself. */
const PATIENCE_MS = 5_000;
/** How often the worker of one order may be lost before the order counts as failed: it may be what ends them. */
const MOST_LOSSES = 8;

/** `work`: makes the packets of a queue until told to end. One line an order on standard output. */
export function work(options: WorkOptions): Promise<number> {
  return withExit(async () => {
    const out = resolve(options.out);
    const connection = connectionOf(options.queue);
    const pages = wholeNumber("--jobs", options.jobs ?? String(availableParallelism()), 64);
    const limit = wholeNumber("--limit", options.limit, 3600);
    const lock = wholeNumber("--lock", options.lock, 3600) * 1000;
    await prepareOut(out);
    await assertReachable(connection, PATIENCE_MS);
    const { UnrecoverableError, Worker } = await import("bullmq");
    const stop = stopOnSignals(() => console.error("finishing what is in hand; once more to end now"));
    const program = await programStamp();
    const fonts = await packetFonts();
    const pool = await openPrinterPool({
      printsPerPage: PRINTS_PER_PAGE,
      pages,
      warn: (message) => console.error(message),
      signals: "program",
      ...(options.browser === undefined ? {} : { browser: options.browser }),
    });
    const worker = new Worker<Order, Answer>(
      options.name,
      async (job) => {
        const order = readOrder(job.data);
        if (!order || dateOf(order.date) !== order.date) throw new UnrecoverableError("not an order of a packet");
        const id = orderId(order);
        if (id !== job.id) throw new UnrecoverableError("the order's id is not its digest");
        // Tried again, by then perhaps by a worker that is up to date.
        if (order.program !== program) throw new Error(`ordered by another version of the program (${order.program}) than this worker's (${program})`);
        const print: typeof pool.print = (html, printing) => pool.print(html, { ...printing, timeoutMs: limit * 1000 });
        return fillOrder({ id, order, out, fonts, print, tell: (step) => job.updateProgress(step) });
      },
      {
        connection: { ...connection, maxRetriesPerRequest: null, retryStrategy: (times) => Math.min(100 * times, 3000) },
        concurrency: pages + 1, // one is computed while the pages print
        lockDuration: lock,
        stalledInterval: lock,
        maxStalledCount: MOST_LOSSES,
      },
    );
    let quiet = false;
    worker.on("error", (error) => {
      if (!quiet) console.error(`queue: ${error.message}`); // found again by itself
      quiet = true;
    });
    worker.on("ready", () => {
      quiet = false;
    });
    worker.on("completed", (job, answer) => console.log(`${answer.outcome}\t${job.id}\t${job.data.stem}`));
    worker.on("failed", (job, error) => console.error(`attempt failed\t${job?.id ?? "?"}\t${error.message.replace(/\s*\n\s*/g, "; ")}`));
    await Promise.race([stop.first, stop.now]);
    const closing = worker.close().then(() => pool.close());
    const how = await Promise.race([closing.then(() => "done" as const), stop.now.then(() => "now" as const)]);
    stop.release();
    if (how === "now") process.exit(130); // the orders in hand are given to another worker when their locks run out
    return 0;
  });
}
