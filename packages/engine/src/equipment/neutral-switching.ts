import type { Edition } from "../basis/edition.js";
import { citeKnown, unseen2026 } from "./known-rule.js";
import type { Statement } from "./statement.js";

const DERIVED = unseen2026("250.30, 250.34(C)", "one-source");

/** How the house is put on the generator. An interlock switches the hot conductors only. */
export type TransferMeans = "interlock" | "manual-switch" | "manual-switch-with-neutral" | "automatic" | "automatic-with-neutral";

export interface NeutralSwitching extends Statement {
  readonly needed: "switched" | "solid";
  /** Whether the transfer means named does so. */
  readonly met: boolean;
}

const SWITCHES_NEUTRAL: Readonly<Record<TransferMeans, boolean>> = {
  interlock: false,
  "manual-switch": false,
  "manual-switch-with-neutral": true,
  automatic: false,
  "automatic-with-neutral": true,
};

/** A generator whose neutral is bonded to its frame is a separately derived source: its neutral is switched; a floating one keeps it solid. 250.30. */
export function neutralSwitching(given: { readonly neutralBonded: boolean; readonly transfer: TransferMeans; readonly edition: Edition }): NeutralSwitching {
  const { neutralBonded, transfer, edition } = given;
  const switched = SWITCHES_NEUTRAL[transfer];
  return neutralBonded
    ? {
        needed: "switched",
        met: switched,
        says: switched
          ? "the transfer equipment switches the neutral: the generator's bond is the only one while it runs"
          : "this generator's neutral is bonded to its frame: use transfer equipment that switches the neutral, or a generator with a floating neutral; an interlock never switches it",
        citation: citeKnown(DERIVED, edition),
      }
    : {
        needed: "solid",
        met: !switched,
        says: switched
          ? "this generator's neutral floats: with the neutral switched it would have no bond at all; use equipment that keeps the neutral solid"
          : "the neutral stays solid, bonded at the service alone",
        citation: citeKnown(DERIVED, edition),
      };
}
