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
export function newOverlay(file: string, terminal: Terminal, options: { readonly json?: boolean }): Promise<number> {
  return withExit(async () => {
    const exists = await access(file).then(
      () => true,
      () => false,
    );
    if (exists) throw new OutputExistsError([file]);
    const text = overlayText(await answersFrom(terminal), dayOf(undefined));
    const read = readOverlay(text);
    if (!read.ok) throw new InputError("the answers", read.issues);
    await writeWhole(dirname(file), [{ name: basename(file), bytes: text }], { force: false });
    if (options.json) console.log(JSON.stringify({ format: "branchwork-overlay-new/1", file, overlay: read.overlay }, null, 2));
    terminal.output.write(`${file} is written. Look through it, then: branchwork overlay check ${file}\n`);
    return EXIT.ready;
  });
}

/** A person is asked again after an answer that cannot be taken; answers from a file end there, with nothing written. */
async function answersFrom({ input, output }: Terminal): Promise<OverlayAnswers> {
  const lines = createInterface({ input, crlfDelay: Number.POSITIVE_INFINITY });
  try {
    const reader = lines[Symbol.asyncIterator]();
    const next = async (): Promise<string> => {
      const { value, done } = await reader.next();
      return done ? "" : String(value).trim();
    };
    const answers: Record<string, string> = {};
    for (const question of OVERLAY_QUESTIONS) {
      output.write(`${question.asks}\n  ${question.why}\n  [${question.usual}] `);
      let answer = await next();
      let slip = slipIn(question, answer);
      while (slip !== null && (input as { readonly isTTY?: boolean }).isTTY === true) {
        output.write(`  ${slip.what}: ${slip.mend}\n  [${question.usual}] `);
        answer = await next();
        slip = slipIn(question, answer);
      }
      if (slip !== null) throw new InputError(question.asks, [{ path: "", what: slip.what, mend: `run the command again: ${slip.mend}` }]);
      answers[question.key] = answer || question.usual;
      output.write("\n");
    }
    return answers as OverlayAnswers;
  } finally {
    lines.close();
  }
}

/** Why an answer cannot be taken; null where it can. */
function slipIn({ choices, number, date }: OverlayQuestion, answer: string): { readonly what: string; readonly mend: string } | null {
  if (answer === "") return null;
  if (choices && !choices.includes(answer)) return { what: `"${answer}" is not one of ${choices.join(", ")}`, mend: "write one of them as it stands" };
  if (number && !/^\d{1,5}(\.\d{1,2})?$/.test(answer)) return { what: `"${answer}" is not a plain number`, mend: "write it as 45 or 45.50" };
  if (date && (!/^\d{4}-\d{2}-\d{2}$/.test(answer) || new Date(`${answer}T00:00:00Z`).toJSON()?.slice(0, 10) !== answer))
    return { what: `"${answer}" is not a day`, mend: "write it as 2026-01-31" };
  return null;
}
