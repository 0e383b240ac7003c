import { access } from "node:fs/promises";
import { basename, dirname } from "node:path";
import { createInterface } from "node:readline/promises";
import { readJob } from "@branchwork/engine";
import { EXIT } from "../exit-codes.js";
import { InputError } from "../load-design.js";
import { OutputExistsError, writeWhole } from "../print/atomic-write.js";
import { withExit } from "../report.js";
import { jobText } from "./job-text.js";
import { type Answers, QUESTIONS, type Taken } from "./questions.js";

interface Terminal {
  readonly input: NodeJS.ReadableStream;
  readonly output: NodeJS.WritableStream;
}

/** `new`: a few questions, then a commented job file that reads without error. An empty answer takes the default shown. */
export function newJob(file: string, terminal: Terminal): Promise<number> {
  return withExit(async () => {
    const exists = await access(file).then(
      () => true,
      () => false,
    );
    if (exists) throw new OutputExistsError([file]);
    const text = jobText(await answersFrom(terminal));
    const read = readJob(text);
    if (!read.ok) throw new InputError("the answers", read.issues);
    await writeWhole(dirname(file), [{ name: basename(file), bytes: text }], { force: false });
    terminal.output.write(`${file} is written. Look through it, then: branchwork check ${file}\n`);
    return EXIT.ready;
  });
}

/** Asks one question after another. A person is asked again after an answer that cannot be taken; answers from a file end there, with nothing written. */
async function answersFrom({ input, output }: Terminal): Promise<Answers> {
  const lines = createInterface({ input, crlfDelay: Number.POSITIVE_INFINITY });
  try {
    const reader = lines[Symbol.asyncIterator]();
    const answers: Record<string, unknown> = {};
    for (const { key, asks, why, usual, take, applies = () => true } of QUESTIONS) {
      if (!applies(answers as Partial<Answers>)) {
        answers[key] = defaultOf(take(usual));
        continue;
      }
      output.write(`${asks}\n  ${why}\n  [${usual}] `);
      let taken = take(await nextLine(reader, usual));
      while (!taken.ok && (input as { readonly isTTY?: boolean }).isTTY === true) {
        output.write(`  ${taken.what}: ${taken.mend}\n  [${usual}] `);
        taken = take(await nextLine(reader, usual));
      }
      if (!taken.ok) throw new InputError(key, [{ path: "", what: taken.what, mend: `run the command again: ${taken.mend}` }]);
      answers[key] = taken.value;
      output.write("\n");
    }
    return answers as unknown as Answers;
  } finally {
    lines.close();
  }
}

async function nextLine(reader: AsyncIterator<string>, usual: string): Promise<string> {
  const { value, done } = await reader.next();
  return (done ? "" : String(value).trim()) || usual;
}

function defaultOf<T>(taken: Taken<T>): T {
  if (!taken.ok) throw new Error(`a question's own default cannot be taken: ${taken.what}`);
  return taken.value;
}
