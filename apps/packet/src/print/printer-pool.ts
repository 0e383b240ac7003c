import { BrowserLostError } from "./browser-lost.js";
import { EnvironmentError } from "./environment-error.js";
import type { Signals } from "./launch.js";
import { PrintError } from "./print-error.js";
import { openPrinter, type Printer, type PrintOptions } from "./printer.js";

/** How a pool works. */
export interface PoolOptions {
  /** Names a browser program. */
  readonly browser?: string;
  /** Receives one-line messages for the person at the terminal. */
  readonly warn: (message: string) => void;
  /** Documents printed side by side; 2 unless told. */
  readonly pages?: number;
  /** Prints after which a page is replaced; 50 unless told. */
  readonly printsPerPage?: number;
  /** Documents that may wait; beyond that a print is refused at once. 1000 unless told. */
  readonly waiting?: number;
  /** See PrinterOptions. */
  readonly signals?: Signals;
}

/** A printer for many documents over a long time. */
export interface PrinterPool extends Pick<Printer, "print" | "version"> {
  /** Ends it: what is being printed is finished, what waits is refused. */
  close(): Promise<void>;
}

interface Job {
  readonly html: string;
  readonly options: PrintOptions;
  readonly done: (pdf: Uint8Array) => void;
  readonly failed: (reason: unknown) => void;
  /** The loss of a browser this document was in. */
  lost?: BrowserLostError;
}

/**
 * Opens a pool over one warm browser. A browser that ends or falls silent (a print passes its time limit) is replaced; every
 * document that was in it is printed once more, alone, so that none pays for another. One that loses its browser again is
 * itself the cause: PrintError. The time limit counts for each of the two attempts, not for the waiting.
 */
export async function openPrinterPool({
  browser,
  warn,
  pages = 2,
  printsPerPage = 50,
  waiting: mostWaiting = 1000,
  signals = "browser",
}: PoolOptions): Promise<PrinterPool> {
  if (!Number.isInteger(pages) || pages < 1) throw new RangeError("a pool needs at least one page");
  const open = () => openPrinter({ ...(browser === undefined ? {} : { browser }), warn, printsPerPage, signals });
  const first = await open();
  let current: Promise<Printer> | undefined = Promise.resolve(first);
  const ending = new Set<Promise<void>>();
  const waiting: Job[] = [];
  const running = new Set<Job>();
  let closed: Promise<void> | undefined;
  let idle: (() => void) | undefined;

  function begin(): void {
    for (let job = waiting[0]; job !== undefined && mayRun(job); job = waiting[0]) {
      waiting.shift();
      running.add(job);
      void run(job).then((again) => {
        running.delete(job);
        if (again) waiting.unshift(job);
        if (running.size === 0 && waiting.length === 0) idle?.();
        begin();
      });
    }
  }

  // A second attempt runs alone.
  function mayRun(job: Job): boolean {
    if (running.size === 0) return true;
    return job.lost === undefined && running.size < pages && ![...running].some(({ lost }) => lost !== undefined);
  }

  /** @returns whether the document is to be printed once more. */
  async function run(job: Job): Promise<boolean> {
    current ??= open();
    const opening = current;
    let printer: Printer;
    try {
      printer = await opening;
    } catch (error) {
      if (current === opening) current = undefined; // the next document tries to start one again
      job.failed(error);
      return false;
    }
    try {
      job.done(await printer.print(job.html, job.options));
      return false;
    } catch (error) {
      if (!(error instanceof BrowserLostError)) {
        job.failed(error);
        return false;
      }
      if (current === opening && (error.how === "silent" || !printer.connected)) {
        current = undefined;
        discard(printer);
      }
      if (job.lost) {
        job.failed(new PrintError(`the document could not be printed in two attempts: ${error.message}`, { cause: error }));
        return false;
      }
      job.lost = error;
      return true;
    }
  }

  // Nobody waits for a browser that is gone to be cleared away, but the pool is not closed before it is.
  function discard(printer: Printer): void {
    const end = printer
      .kill()
      .catch((error: unknown) => warn(`a browser that was replaced could not be cleared away: ${error instanceof Error ? error.message : String(error)}`));
    ending.add(end);
    void end.then(() => ending.delete(end));
  }

  async function end(): Promise<void> {
    // Those at their second attempt have been begun: they count as being printed.
    for (const job of waiting.splice(0)) {
      if (job.lost) waiting.push(job);
      else job.failed(new EnvironmentError("the printer was closed before this document's turn"));
    }
    if (running.size > 0 || waiting.length > 0) {
      await new Promise<void>((resolve) => {
        idle = resolve;
      });
    }
    const last = await current?.catch(() => undefined); // one that did not start has nothing to close; its document was told
    await last?.close();
    await Promise.all(ending);
  }

  return {
    version: first.version,
    print(html, options) {
      if (closed) return Promise.reject(new EnvironmentError("the printer is closed"));
      if (waiting.length >= mostWaiting)
        return Promise.reject(new EnvironmentError(`${waiting.length} documents wait to be printed already`, { hint: "try again later" }));
      return new Promise<Uint8Array>((done, failed) => {
        waiting.push({ html, options, done, failed });
        begin();
      });
    },
    close() {
      closed ??= end();
      return closed;
    },
  };
}
