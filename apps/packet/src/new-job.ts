import { access } from "node:fs/promises";
import { basename, dirname } from "node:path";
import { createInterface } from "node:readline/promises";
import { readJob } from "@branchwork/engine";
import { EXIT } from "./exit-codes.js";
import { type Answers, jobText, QUESTIONS } from "./job-text.js";
import { InputError } from "./load-design.js";
import { OutputExistsError, writeWhole } from "./print/atomic-write.js";
import { withExit } from "./report.js";

interface Terminal {
  readonly input: NodeJS.ReadableStream;
  readonly output: NodeJS.WritableStream;
}

/** `new`: a few questions, then a commented job file that reads without error. An empty answer takes the default shown. */
export function newJob(file: string, { input, output }: Terminal): Promise<number> {
  return withExit(async () => {
    const exists = await access(file).then(
      () => true,
      () => false,
    );
    if (exists) throw new OutputExistsError([file]);
    const lines = createInterface({ input, crlfDelay: Number.POSITIVE_INFINITY });
    const reader = lines[Symbol.asyncIterator]();
    const answers: Record<string, string> = {};
    for (const question of QUESTIONS) {
      output.write(`${question.asks}\n  ${question.why}\n  [${question.usual}] `);
      const { value, done } = await reader.next();
      const answer = done ? "" : String(value).trim();
      if (answer && question.choices && !question.choices.includes(answer)) {
        lines.close();
        throw new InputError(question.key, [
          { path: "", what: `"${answer}" is not one of ${question.choices.join(", ")}`, mend: "run the command again and choose one of them" },
        ]);
      }
      answers[question.key] = answer || question.usual;
      output.write("\n");
    }
    lines.close();
    const text = jobText(answers as Answers);
    const read = readJob(text);
    if (!read.ok) throw new InputError("the answers", read.issues);
    await writeWhole(dirname(file), [{ name: basename(file), bytes: text }], { force: false });
    output.write(`${file} is written. Look through it, then: branchwork build ${file}\n`);
    return EXIT.ready;
  });
}
