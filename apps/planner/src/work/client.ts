import type { Answers, Request } from "./protocol.js";

interface Waiting {
  readonly resolve: (value: never) => void;
  readonly reject: (error: Error) => void;
}

let worker: Worker | null = null;
let next = 1;
const waiting = new Map<number, Waiting>();

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
    made.terminate();
    worker = null; // the next question starts another
    for (const { reject } of waiting.values()) reject(new Error(event.message || "the part of the page that computes did not start"));
    waiting.clear();
  };
  worker = made;
  return made;
}

/** Asks the worker. Rejects when the computation itself fails, which is a bug and is shown as one. */
export function ask<K extends Request["ask"]>(request: Extract<Request, { ask: K }>): Promise<Answers[K]> {
  const id = next++;
  return new Promise((resolve, reject) => {
    waiting.set(id, { resolve, reject });
    started().postMessage({ id, request });
  });
}
