import type { Citation } from "../basis/citation.js";

/** A rule put in words, with where it stands. */
export interface Statement {
  readonly says: string;
  readonly citation: Citation;
}

/** Whether a rule bears on the circuit, and why. */
export interface Applies extends Statement {
  readonly applies: boolean;
}

/** Whether something is required; `ask` when it turns on what only a person can see. */
export interface Required extends Statement {
  readonly required: "yes" | "no" | "ask";
}
