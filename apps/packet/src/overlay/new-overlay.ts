import { access } from "node:fs/promises";
import { basename, dirname } from "node:path";
import { createInterface } from "node:readline/promises";
import { readOverlay } from "@branchwork/sheets";
import { EXIT } from "../exit-codes.js";
import { InputError } from "../load-design.js";
import { OutputExistsError, writeWhole } from "../print/atomic-write.js";
import { withExit } from "../report.js";
import { dayOf } from "./day.js";
import { OVERLAY_QUESTIONS, type OverlayAnswers, type OverlayQuestion, overlayText } from "./overlay-text.js";

interface Terminal {
  readonly input: NodeJS.ReadableStream;
  readonly output: NodeJS.WritableStream;
}

/** `overlay new`: a few questions, then a commented overlay file that reads without error. An empty answer takes the default shown. */
export function newOverlay(file: string, { input, output }: Terminal, options: { readonly json?: boolean }): Promise<number> {
  return withExit(async () => {
    const exists = await access(file).then(
      () => true,
      () => false,
    );
    if (exists) throw new OutputExistsError([file]);
    const lines = createInterface({ input, crlfDelay: Number.POSITIVE_INFINITY });
    try {
      const reader = lines[Symbol.asyncIterator]();
      const answers: Record<string, string> = {};
      for (const question of OVERLAY_QUESTIONS) {
        output.write(`${question.asks}\n  ${question.why}\n  [${question.usual}] `);
        const { value, done } = await reader.next();
        const answer = done ? "" : String(value).trim();
        answers[question.key] = tested(question, answer) || question.usual;
        output.write("\n");
      }
      const text = overlayText(answers as OverlayAnswers, dayOf(undefined));
      const read = readOverlay(text);
      if (!read.ok) throw new InputError("the answers", read.issues);
      await writeWhole(dirname(file), [{ name: basename(file), bytes: text }], { force: false });
      if (options.json) console.log(JSON.stringify({ format: "branchwork-overlay-new/1", file, overlay: read.overlay }, null, 2));
      output.write(`${file} is written. Look through it, then: branchwork overlay check ${file}\n`);
      return EXIT.ready;
    } finally {
      lines.close();
    }
  });
}

function tested({ key, choices, number }: OverlayQuestion, answer: string): string {
  if (answer && choices && !choices.includes(answer))
    throw new InputError(key, [{ path: "", what: `"${answer}" is not one of ${choices.join(", ")}`, mend: "run the command again and choose one of them" }]);
  if (answer && number && !/^\d{1,5}(\.\d{1,2})?$/.test(answer))
    throw new InputError(key, [{ path: "", what: `"${answer}" is not a plain number`, mend: "run the command again and write it as 45 or 45.50" }]);
  return answer;
}
