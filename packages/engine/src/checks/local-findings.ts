import type { ChangedVerdict } from "../basis/basis.js";
import { citeOther } from "../basis/citation.js";
import type { CheckGiven, Finding, Outcome } from "./finding.js";

/** An outcome with the jurisdiction's verdict in place of the code's; what to do stays with it. */
export function judgedLocally(outcome: Outcome, changed: ChangedVerdict | undefined): Outcome {
  if (changed === undefined || outcome.verdict === "pass" || outcome.verdict === "not-applicable" || outcome.verdict !== changed.from) return outcome;
  const { subject } = outcome;
  const says = `${outcome.says}; a ${changed.to} here: ${changed.reason} (${changed.citation})`;
  const next = outcome.verdict === "needs-person" ? outcome.look : outcome.mend;
  return changed.to === "needs-person" ? { verdict: "needs-person", subject, says, look: next } : { verdict: changed.to, subject, says, mend: next };
}

/** What the jurisdiction alone asks somebody to look at, one finding each. */
export function localFindings({ basis, design }: CheckGiven): Finding[] {
  const digs = [...design.feeders, ...design.circuits].some((run) => run.segments.some(({ segment }) => segment.place === "buried"));
  return basis.addedChecks.map(({ id, title, look, onlyTrench, reason, citation }): Finding => {
    const of = { check: id, title, citation: citeOther(citation, "", "one-source"), subject: "Jurisdiction" };
    return onlyTrench && !digs
      ? { ...of, verdict: "not-applicable", says: "nothing is buried" }
      : { ...of, verdict: "needs-person", says: `asked here: ${reason}`, look };
  });
}
