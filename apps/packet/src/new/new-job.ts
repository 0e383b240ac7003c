import { basename, dirname } from "node:path";
import { readJob } from "@branchwork/engine";
import { ask, refuseExisting, type Terminal } from "../ask.js";
import { EXIT } from "../exit-codes.js";
import { InputError } from "../load-design.js";
import { writeWhole } from "../print/atomic-write.js";
import { withExit } from "../report.js";
import { jobText } from "./job-text.js";
import { QUESTIONS } from "./questions.js";

/** `new`: a few questions, then a commented job file that reads without error. An empty answer takes the default shown. */
export function newJob(file: string, terminal: Terminal): Promise<number> {
  return withExit(async () => {
    await refuseExisting(file);
    const text = jobText(await ask(QUESTIONS, terminal));
    const read = readJob(text);
    if (!read.ok) throw new InputError("the answers", read.issues);
    await writeWhole(dirname(file), [{ name: basename(file), bytes: text }], { force: false });
    terminal.output.write(`${file} is written. Look through it, then: branchwork check ${file}\n`);
    return EXIT.ready;
  });
}
