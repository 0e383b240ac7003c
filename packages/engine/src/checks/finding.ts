import type { Basis } from "../basis/basis.js";
import type { Citation, Rule } from "../basis/citation.js";
import type { DesignedJob } from "../designed.js";
import type { Job } from "../job/schema.js";

/** What one check says of one thing. `needs-person` names what somebody has to look at on site. */
export type Outcome = { readonly subject: string; readonly says: string } & (
  | { readonly verdict: "pass" | "not-applicable" }
  | { readonly verdict: "fail" | "caution"; readonly mend: string }
  | { readonly verdict: "needs-person"; readonly look: string }
);

export type Finding = Outcome & { readonly check: string; readonly title: string; readonly citation: Citation | null };

export interface CheckGiven {
  readonly job: Job;
  readonly basis: Basis;
  readonly design: DesignedJob;
}

export interface Check {
  readonly id: string;
  readonly title: string;
  /** null for a matter of common practice or local law that no section of the code governs. */
  readonly rule: Rule | null;
  readonly run: (given: CheckGiven) => readonly Outcome[];
}
