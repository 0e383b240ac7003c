import type { Finding } from "@branchwork/engine";
import { EXIT } from "./exit-codes.js";
import { InputError } from "./load-design.js";
import { OutputExistsError } from "./print/atomic-write.js";
import { EnvironmentError } from "./print/environment-error.js";
import { PrintError } from "./print/print-error.js";
import { forTerminal } from "./terminal-text.js";

const MARK = { fail: "FAIL", caution: "caution", "needs-person": "look", pass: "pass", "not-applicable": "n/a" } as const;

const useColour = () => process.stderr.isTTY === true && process.env.NO_COLOR === undefined && process.env.TERM !== "dumb";
const bold = (text: string) => (useColour() ? `\u001b[1m${text}\u001b[0m` : text);

/** One finding as lines for a terminal. The verdict is a word; weight only repeats it. */
export function printFinding(finding: Finding): string {
  const section = finding.citation ? ` [${finding.citation.section}]` : "";
  const mend = "mend" in finding ? `\n      mend: ${finding.mend}` : "look" in finding ? `\n      look: ${finding.look}` : "";
  const mark = finding.verdict === "fail" ? bold(MARK.fail) : MARK[finding.verdict];
  return `${mark}  ${finding.subject}: ${finding.says}${section}${mend}`;
}

/** Runs a command's work; bad input and a lacking machine become one message and their exit code, a bug stays an error. */
export async function withExit(work: () => Promise<number>): Promise<number> {
  try {
    return await work();
  } catch (error) {
    if (error instanceof InputError || error instanceof OutputExistsError) {
      console.error(forTerminal(error instanceof OutputExistsError ? `${error.message}; add --force to overwrite` : error.message));
      return EXIT.badInput;
    }
    if (error instanceof EnvironmentError || error instanceof PrintError) {
      console.error(forTerminal(error.message));
      return EXIT.environment;
    }
    throw error;
  }
}
