import type { DesignedCircuit, DesignedFeeder, DesignedPull, DesignedRun, DesignedSegment } from "../designed.js";
import type { GfciProtection } from "../equipment/gfci-device.js";
import type { CheckGiven, Outcome } from "./finding.js";

export const pass = (subject: string, says: string): Outcome => ({ verdict: "pass", subject, says });
export const notApplicable = (subject: string, says: string): Outcome => ({ verdict: "not-applicable", subject, says });
export const fail = (subject: string, says: string, mend: string): Outcome => ({ verdict: "fail", subject, says, mend });
export const caution = (subject: string, says: string, mend: string): Outcome => ({ verdict: "caution", subject, says, mend });
export const needsPerson = (subject: string, says: string, look: string): Outcome => ({ verdict: "needs-person", subject, says, look });

/** What a check says of an outlet that has ground-fault protection. */
export const protectedBy = (subject: string, { says, unusual }: GfciProtection): Outcome =>
  unusual
    ? needsPerson(
        subject,
        `${says}: such a device is commonly made for 120 V, 15 or 20 A alone (common practice, no source)`,
        "see the listing on the device for this voltage and rating, or use a GFCI breaker",
      )
    : pass(subject, says);

/** Runs a judgement on every circuit. */
export function eachCircuit(judge: (circuit: DesignedCircuit, given: CheckGiven) => Outcome): (given: CheckGiven) => Outcome[] {
  return (given) => given.design.circuits.map((circuit) => judge(circuit, given));
}

/** Runs a judgement on every run of the tree, feeders first: what holds for a circuit and for a feeder alike. */
export function eachRun(judge: (run: DesignedFeeder | DesignedCircuit, given: CheckGiven) => Outcome): (given: CheckGiven) => Outcome[] {
  return (given) => [...given.design.feeders, ...given.design.circuits].map((run) => judge(run, given));
}

/** What is found on each run of the tree, feeders first; where nothing is, `nothing` says why the check has nothing to say of that run. */
export function foundOnRuns(
  find: (run: DesignedFeeder | DesignedCircuit, given: CheckGiven) => readonly Outcome[],
  nothing: string | ((run: DesignedRun) => string),
): (given: CheckGiven) => Outcome[] {
  return (given) =>
    [...given.design.feeders, ...given.design.circuits].flatMap((run) => {
      const found = find(run, given);
      return found.length > 0 ? found : [notApplicable(run.run.name, typeof nothing === "string" ? nothing : nothing(run))];
    });
}

/** Runs a judgement on every segment of every run; null where the check has nothing to say of a segment. */
export function eachSegment(
  judge: (segment: DesignedSegment, run: DesignedRun, subject: string, given: CheckGiven) => Outcome | null,
): (given: CheckGiven) => Outcome[] {
  return foundOnRuns(
    (run, given) => run.segments.flatMap((segment) => judge(segment, run, `${run.run.name}: ${segment.segment.name}`, given) ?? []),
    "no stretch of it is of the kind",
  );
}

/** Runs a judgement on every pull of every run; null where the check has nothing to say of it. */
export function eachPull(judge: (pull: DesignedPull, subject: string) => Outcome | null): (given: CheckGiven) => Outcome[] {
  return foundOnRuns(
    (run) => run.pulls.flatMap((pull) => judge(pull, `${run.run.name}: ${pull.names.join(", ")}`) ?? []),
    ({ pulls }) => (pulls.length === 0 ? "no raceway" : "the tables lack a figure for it"),
  );
}
