import { type Basis, type Design, design, readJob } from "@branchwork/engine";
import { basisFrom, nearest, type Overlay, readOverlay } from "@branchwork/sheets";
import type { Given, ShownIssue } from "./protocol.js";

export type Loaded =
  | { readonly ok: true; readonly design: Design; readonly overlay: Overlay | null; readonly basis: Basis }
  | { readonly ok: false; readonly issues: readonly ShownIssue[] };

/** Reads job and overlay and designs the job, in the same order and with the same edition as the command line does. */
export function loaded(given: Given): Loaded {
  const read = readJob(given.job);
  if (!read.ok) return { ok: false, issues: read.issues.map((issue) => ({ ...issue, of: "job" })) };
  const reading = given.overlay === null ? null : readOverlay(given.overlay);
  if (reading !== null && !reading.ok) return { ok: false, issues: reading.issues.map((issue) => ({ ...issue, of: "overlay" })) };
  const overlay = reading?.overlay ?? null;
  const asked = read.job.code.edition;
  const edition = overlay?.edition ?? asked;
  const basis = basisFrom(overlay, edition);
  if (reading !== null && basis.issues.length > 0)
    return { ok: false, issues: basis.issues.map((issue) => ({ ...issue, line: nearest(reading.placed, issue.path.split(".")).line, of: "overlay" })) };
  const changed = edition === asked ? [] : [{ path: "code.edition", says: `the job names the ${asked} edition; ${edition} is used, from the overlay` }];
  return { ok: true, design: design({ job: read.job, basis, assumptions: [...read.assumptions, ...changed] }), overlay, basis };
}
