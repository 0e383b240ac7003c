import { Worker } from "node:worker_threads";
import type { PrintDocument } from "../build.js";
import { MissingGlyphError } from "../print/print-error.js";
import type { FromMaker, ToMaker } from "./maker-messages.js";
import { Refusal } from "./refusal.js";

/** A packet as it is sent. */
export interface MadePacket {
  readonly pdf: Uint8Array;
  readonly ready: boolean;
}

/** What one packet may take: time of computing in milliseconds, the print's own not counted, and memory of its thread. */
export interface MakerLimits {
  readonly computeMs: number;
  readonly megabytes: number;
}

/** Makes packets in threads of their own, so that a job that is long to work out, or without end, holds up no other. */
export interface PacketMakers {
  /** Of a request's body. Throws Refusal for what cannot be one and for one that takes more than its limits. */
  make(body: string): Promise<MadePacket>;
  close(): Promise<void>;
}

interface Maker {
  readonly thread: Worker;
  /** Of the request in hand. */
  hear: (message: FromMaker) => void;
  lost: (error: unknown) => void;
}

/** Makers are begun as they are needed and kept for the next request. How many there are at once is for the caller to bound. */
export function openPacketMakers({
  print,
  limits,
  program,
}: {
  readonly print: PrintDocument;
  readonly limits: MakerLimits;
  readonly program: URL;
}): PacketMakers {
  const idle: Maker[] = [];
  const all = new Set<Worker>();

  function begin(): Maker {
    const thread = new Worker(program, { resourceLimits: { maxOldGenerationSizeMb: limits.megabytes }, env: {}, execArgv: [] });
    const maker: Maker = { thread, hear: () => undefined, lost: () => undefined };
    all.add(thread);
    thread.on("message", (message: FromMaker) => maker.hear(message));
    thread.on("error", (error) => maker.lost(error));
    thread.on("exit", () => {
      all.delete(thread);
      if (idle.includes(maker)) idle.splice(idle.indexOf(maker), 1);
      maker.lost(new Error("the thread that made a packet ended"));
    });
    thread.unref(); // a server that has ended is not kept by an idle thread
    return maker;
  }

  return {
    make: (body) => {
      const maker = idle.pop() ?? begin();
      const clock = new Clock(limits.computeMs);
      const tell = (message: ToMaker) => maker.thread.postMessage(message);
      let unprinted: { readonly error: unknown } | undefined;
      return new Promise<MadePacket>((resolve, reject) => {
        let over = false;
        const end = (settle: () => void, keep: boolean) => {
          if (over) return;
          over = true;
          clock.stop();
          [maker.hear, maker.lost] = [() => undefined, () => undefined];
          if (keep) idle.push(maker);
          else void maker.thread.terminate();
          settle();
        };
        const refuse = (what: string) => end(() => reject(new Refusal(422, what)), false);
        const goOn = (message: ToMaker) => {
          if (over) return;
          clock.go();
          tell(message);
        };
        const printIt = async (html: string, date: Date, expectText: string) => {
          try {
            const pdf = await print(html, { date, expectText });
            goOn({ kind: "printed", pdf });
          } catch (error) {
            unprinted = { error };
            goOn(error instanceof MissingGlyphError ? { kind: "glyph-missing", says: error.message } : { kind: "unprinted" });
          }
        };
        maker.hear = (message) => {
          if (message.kind === "print") {
            clock.stop();
            void printIt(message.html, message.date, message.expectText);
          } else if (message.kind === "made") end(() => resolve({ pdf: message.pdf, ready: message.ready }), true);
          else if (message.kind === "refused") end(() => reject(new Refusal(message.status, message.says, {}, message.issues)), true);
          else end(() => reject(unprinted === undefined ? new Error(message.says) : unprinted.error), unprinted !== undefined);
        };
        maker.lost = (error) => {
          if ((error as NodeJS.ErrnoException).code === "ERR_WORKER_OUT_OF_MEMORY") refuse(`the job takes more than ${limits.megabytes} MB to work out`);
          else end(() => reject(error), false);
        };
        clock.late = () => refuse(`the job was not worked out within ${limits.computeMs / 1000} s`);
        clock.go();
        tell({ kind: "make", body });
      });
    },
    close: async () => {
      await Promise.all([...all].map((thread) => thread.terminate()));
    },
  };
}

/** Counts time down while it goes. */
class Clock {
  late: () => void = () => undefined;
  private timer: NodeJS.Timeout | undefined;
  private since = 0;
  constructor(private left: number) {}
  go(): void {
    this.since = performance.now();
    this.timer = setTimeout(() => this.late(), Math.max(1, this.left));
  }
  stop(): void {
    clearTimeout(this.timer);
    this.left -= performance.now() - this.since;
  }
}
