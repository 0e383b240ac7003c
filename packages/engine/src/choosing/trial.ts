import type { Basis } from "../basis/basis.js";
import type { Finding } from "../checks/finding.js";
import { runChecks } from "../checks/registry.js";
import { designCircuit } from "../circuit.js";
import type { Design, DesignedCircuit, DesignedFeeder } from "../designed.js";
import { designFeeder } from "../feeder.js";
import type { Job } from "../job/schema.js";
import { withinLocalDrop } from "../local-drop.js";
import { runsIn } from "./lone-run.js";

export interface TrialGiven {
  /** The job with the run as it is tried. */
  readonly job: Job;
  readonly basis: Basis;
  readonly id: string;
  /** A design of the same job but for that run's route. */
  readonly like: Design;
}

export interface Trial {
  readonly run: DesignedCircuit | DesignedFeeder;
  readonly findings: readonly Finding[];
  /** The drop limit in force, per cent. */
  readonly limitPercent: number;
}

/**
 * One run worked again where it hangs, all else as designed before. What is above and beside a run does not hang on its route; what is
 * below does, in drop and fault current, and no finding about a run reads those of what it feeds: so the findings about the run are those of `design`.
 */
export function trial({ job: asked, basis, id, like }: TrialGiven): Trial {
  const { job } = withinLocalDrop(asked, basis);
  const found = runsIn(job).find(({ run }) => run.id === id);
  if (found === undefined) throw new RangeError(`the job has no run ${id}`);
  const { panel } = found;
  const upstream = like.feeders.find(({ feeder }) => feeder.panel.id === panel.id) ?? null;
  const faultAtPanel = upstream === null ? (like.serviceFault?.point ?? null) : (upstream.fault?.end ?? null);
  const given = { panel, upstream, faultAtPanel, job, basis };
  const circuit = found.kind === "circuit" ? designCircuit(found.run, given).designed : null;
  const feeder = found.kind === "feeder" ? designFeeder(found.run, given).designed : null;
  const circuits = circuit === null ? like.circuits : like.circuits.map((one) => (one.run.id === id ? circuit : one));
  const feeders = feeder === null ? like.feeders : like.feeders.map((one) => (one.run.id === id ? feeder : one));
  const findings = runChecks({ job, basis, design: { ...like, job, circuits, feeders } });
  return { run: (circuit ?? feeder)!, findings, limitPercent: job.drop.limit_percent };
}
