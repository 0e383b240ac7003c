import type { Check, Outcome } from "./finding.js";
import { caution, eachPull, pass } from "./outcome.js";

export const hardPull: Check = {
  id: "hard-pull",
  title: "The conductors can be drawn in by hand",
  rule: null,
  run: eachPull(({ hard }, subject): Outcome | null => {
    if (hard === null) return null;
    const reasons = hard.reasons.map(({ says }) => says).join("; ");
    if (hard.hard) return caution(subject, `a hard pull: ${reasons}`, hard.eases.join("; "));
    return pass(subject, reasons === "" ? "nothing makes it hard" : `one thing to watch: ${reasons}`);
  }),
};
