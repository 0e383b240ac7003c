import type { DesignedCircuit, DesignedSegment } from "../designed.js";
import type { CheckGiven, Outcome } from "./finding.js";

export const pass = (subject: string, says: string): Outcome => ({ verdict: "pass", subject, says });
export const notApplicable = (subject: string, says: string): Outcome => ({ verdict: "not-applicable", subject, says });
export const fail = (subject: string, says: string, mend: string): Outcome => ({ verdict: "fail", subject, says, mend });
export const caution = (subject: string, says: string, mend: string): Outcome => ({ verdict: "caution", subject, says, mend });
export const needsPerson = (subject: string, says: string, look: string): Outcome => ({ verdict: "needs-person", subject, says, look });

/** Runs a judgement on every circuit. */
export function eachCircuit(judge: (circuit: DesignedCircuit, given: CheckGiven) => Outcome): (given: CheckGiven) => Outcome[] {
  return (given) => given.design.circuits.map((circuit) => judge(circuit, given));
}

/** Runs a judgement on every segment of every circuit; null where the check has nothing to say of a segment. */
export function eachSegment(
  judge: (segment: DesignedSegment, circuit: DesignedCircuit, subject: string, given: CheckGiven) => Outcome | null,
): (given: CheckGiven) => Outcome[] {
  return (given) =>
    given.design.circuits.flatMap((circuit) => {
      const found = circuit.segments
        .map((segment) => judge(segment, circuit, `${circuit.circuit.name}: ${segment.segment.name}`, given))
        .filter((outcome) => outcome !== null);
      return found.length > 0 ? found : [notApplicable(circuit.circuit.name, "no stretch of this circuit is of the kind")];
    });
}
