import { basename, dirname } from "node:path";
import { readOverlay } from "@branchwork/sheets";
import { ask, refuseExisting, type Terminal } from "../ask.js";
import { EXIT } from "../exit-codes.js";
import { InputError } from "../load-design.js";
import { writeWhole } from "../print/atomic-write.js";
import { withExit } from "../report.js";
import { dayOf } from "./day.js";
import { OVERLAY_QUESTIONS } from "./overlay-questions.js";
import { overlayText } from "./overlay-text.js";

/** `overlay new`: a few questions, then a commented overlay file that reads without error. An empty answer takes the default shown. */
export function newOverlay(file: string, terminal: Terminal, options: { readonly json?: boolean }): Promise<number> {
  return withExit(async () => {
    await refuseExisting(file);
    const text = overlayText(await ask(OVERLAY_QUESTIONS, terminal), dayOf(undefined));
    const read = readOverlay(text);
    if (!read.ok) throw new InputError("the answers", read.issues);
    await writeWhole(dirname(file), [{ name: basename(file), bytes: text }], { force: false });
    if (options.json) console.log(JSON.stringify({ format: "branchwork-overlay-new/1", file, overlay: read.overlay }, null, 2));
    terminal.output.write(`${file} is written. Look through it, then: branchwork overlay check ${file}\n`);
    return EXIT.ready;
  });
}
