import type { Answers, Request } from "./protocol.js";

interface Waiting {
  readonly resolve: (value: never) => void;
  readonly reject: (error: Error) => void;
}
/** Asks a worker. Rejects when the computation itself fails, which is a bug and is shown as one. */
type Ask = <K extends Request["ask"]>(request: Extract<Request, { ask: K }>) => Promise<Answers[K]>;

/** A worker that starts with its first question, and again after it broke or was ended. */
function answering(): { readonly ask: Ask; readonly end: () => void } {
  let worker: Worker | null = null;
  let next = 1;
  const waiting = new Map<number, Waiting>();
  const drop = (why: string) => {
    worker?.terminate();
    worker = null;
    for (const { reject } of waiting.values()) reject(new Error(why));
    waiting.clear();
  };
  function started(): Worker {
    if (worker !== null) return worker;
    const made = new Worker(new URL("./worker.ts", import.meta.url), { type: "module" });
    made.onmessage = ({ data }: MessageEvent<{ readonly id: number; readonly value?: never; readonly error?: string }>) => {
      const asked = waiting.get(data.id);
      waiting.delete(data.id);
      if (data.error === undefined) asked?.resolve(data.value!);
      else asked?.reject(new Error(data.error));
    };
    made.onerror = (event) => {
      event.preventDefault();
      drop(event.message || "the part of the page that computes did not start");
    };
    worker = made;
    return made;
  }
  return {
    ask: (request) => {
      const id = next++;
      return new Promise((resolve, reject) => {
        waiting.set(id, { resolve, reject });
        started().postMessage({ id, request });
      });
    },
    end: () => drop("ended"),
  };
}

export const { ask } = answering();

const search = answering();
/** The same of a long search, in a worker of its own, so that the numbers follow the answers meanwhile. */
export const askSearch = search.ask;
export const endSearch = search.end;
