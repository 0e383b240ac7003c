import type { Basis } from "./basis/basis.js";
import type { Assumption } from "./designed.js";
import type { Job } from "./job/schema.js";

/** The job with its voltage drop limit lowered to the jurisdiction's, and that said; the job itself where its own is as low. */
export function withinLocalDrop(job: Job, basis: Basis): { readonly job: Job; readonly assumptions: readonly Assumption[] } {
  const local = basis.drop;
  if (local === null || local.limitPercent >= job.drop.limit_percent) return { job, assumptions: [] };
  const says = `voltage drop limit of ${local.limitPercent} % taken, ${local.required ? "required" : "advised"} here (${local.citation}), in place of ${job.drop.limit_percent} %`;
  return { job: { ...job, drop: { ...job.drop, limit_percent: local.limitPercent } }, assumptions: [{ path: "drop.limit_percent", says }] };
}
