import { type Basis, unamended } from "./basis/basis.js";
import { runChecks } from "./checks/registry.js";
import { designCircuit } from "./circuit.js";
import type { Assumption, Design, DesignedCircuit, DesignedFeeder, DesignedJob } from "./designed.js";
import { designFeeder } from "./feeder.js";
import type { Job, Panel } from "./job/schema.js";
import { withinLocalDrop } from "./local-drop.js";
import { circuitLoad, feederNewLoad, type NewLoad } from "./service/new-load.js";
import { serviceConductor } from "./service/service-conductor.js";
import { type FaultPoint, serviceFault } from "./service/service-fault.js";
import { serviceLoad } from "./service/service-load.js";

/**
 * The map of the engine. A job and the adopted code in, every worked value and finding out. Bad installations are findings,
 * never thrown errors.
 *
 * @param given.job a job as the reader gives it, with the defaults it filled
 * @param given.basis the adopted code; the unamended edition of the job when left out
 */
export function design(given: { readonly job: Job; readonly basis?: Basis; readonly assumptions?: readonly Assumption[] }): Design {
  const basis = given.basis ?? unamended(given.job.code.edition);
  const local = withinLocalDrop(given.job, basis);
  const { job } = local;
  const atService = serviceFault(job, basis.edition);
  const conductor = serviceConductor(job, basis.edition);
  // 1. the tree from the service panel down: each circuit and feeder with its load, overcurrent, conductors, drop, raceways, boxes
  const tree = designPanel(job.service.panel, null, atService?.point ?? null, job, basis);
  // 2. the service with and without the new work
  const service = serviceLoad(job, tree.added, basis.edition);
  const designed: DesignedJob = {
    job,
    edition: basis.edition,
    assumptions: [...(given.assumptions ?? []), ...local.assumptions, ...tree.assumptions, ...service.assumptions, ...(atService?.assumptions ?? [])],
    service: { ...service.load, steps: [...service.load.steps, ...(conductor?.steps ?? []), ...(atService?.steps ?? [])] },
    serviceFault: atService,
    serviceConductor: conductor,
    circuits: tree.circuits,
    feeders: tree.feeders,
  };
  // 3. every check
  const findings = runChecks({ job, basis, design: designed });
  return { ...designed, findings, ready: !findings.some((finding) => finding.verdict === "fail") };
}

interface DesignedTree {
  readonly circuits: readonly DesignedCircuit[];
  readonly feeders: readonly DesignedFeeder[];
  readonly assumptions: readonly Assumption[];
  /** New load that this panel's runs put on it. */
  readonly added: readonly NewLoad[];
}

function designPanel(panel: Panel, upstream: DesignedFeeder | null, faultAtPanel: FaultPoint | null, job: Job, basis: Basis): DesignedTree {
  const given = { panel, upstream, faultAtPanel, job, basis };
  const circuits = panel.circuits.map((circuit) => designCircuit(circuit, given));
  const feeders = panel.feeders.map((feeder) => {
    const made = designFeeder(feeder, given);
    return { ...made, below: designPanel(feeder.panel, made.designed, made.designed.fault?.end ?? null, job, basis) };
  });
  return {
    circuits: [...circuits.map((c) => c.designed), ...feeders.flatMap((f) => f.below.circuits)],
    feeders: feeders.flatMap((f) => [f.designed, ...f.below.feeders]),
    assumptions: [...circuits.flatMap((c) => c.assumptions), ...feeders.flatMap((f) => [...f.assumptions, ...f.below.assumptions])],
    added: [...circuits.map((c) => circuitLoad(c.designed)), ...feeders.map((f) => feederNewLoad(f.designed, f.load.addedVA, f.below.circuits))],
  };
}
