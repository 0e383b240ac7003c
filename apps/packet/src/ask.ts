import { access } from "node:fs/promises";
import { createInterface } from "node:readline/promises";
import { InputError } from "./load-design.js";
import { OutputExistsError } from "./print/atomic-write.js";

export interface Terminal {
  readonly input: NodeJS.ReadableStream;
  readonly output: NodeJS.WritableStream;
}

/** What an answer is taken for, or what is wrong with it. */
export type Taken<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly what: string; readonly mend: string };

/** One question of a list whose answers together make an `A`. */
export interface Question<A, K extends keyof A = keyof A> {
  readonly key: K;
  readonly asks: string;
  readonly why: string;
  /** What an empty answer stands for. */
  readonly usual: string;
  readonly take: (answer: string) => Taken<A[K]>;
  /** Whether it is asked at all; always, when absent. */
  readonly applies?: (before: Partial<A>) => boolean;
}

/**
 * Asks one question after another. A person is asked again after an answer that cannot be taken; answers from a file end there, with
 * InputError.
 */
export async function ask<A>(questions: readonly Question<A>[], { input, output }: Terminal): Promise<A> {
  const lines = createInterface({ input, crlfDelay: Number.POSITIVE_INFINITY });
  try {
    const reader = lines[Symbol.asyncIterator]();
    const next = async (usual: string): Promise<string> => {
      const { value, done } = await reader.next();
      return (done ? "" : String(value).trim()) || usual;
    };
    const answers: Partial<A> = {};
    for (const { key, asks, why, usual, take, applies = () => true } of questions) {
      if (!applies(answers)) {
        answers[key] = usualOf(take(usual));
        continue;
      }
      output.write(`${asks}\n  ${why}\n  [${usual}] `);
      let taken = take(await next(usual));
      while (!taken.ok && (input as { readonly isTTY?: boolean }).isTTY === true) {
        output.write(`  ${taken.what}: ${taken.mend}\n  [${usual}] `);
        taken = take(await next(usual));
      }
      if (!taken.ok) throw new InputError(asks, [{ path: "", what: taken.what, mend: `run the command again: ${taken.mend}` }]);
      answers[key] = taken.value;
      output.write("\n");
    }
    return answers as A;
  } finally {
    lines.close();
  }
}

function usualOf<T>(taken: Taken<T>): T {
  if (!taken.ok) throw new Error(`a question's own default cannot be taken: ${taken.what}`);
  return taken.value;
}

/** Throws OutputExistsError where a file to be begun is there already. */
export async function refuseExisting(file: string): Promise<void> {
  const exists = await access(file).then(
    () => true,
    () => false,
  );
  if (exists) throw new OutputExistsError([file]);
}
