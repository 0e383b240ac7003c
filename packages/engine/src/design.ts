import { type Basis, unamended } from "./basis/basis.js";
import { runChecks } from "./checks/registry.js";
import { designCircuit } from "./circuit.js";
import type { Assumption, Design, DesignedJob } from "./designed.js";
import type { Job } from "./job/schema.js";
import { serviceLoad } from "./service/service-load.js";

/**
 * The map of the engine. A job and the adopted code in, every worked value and finding out. Bad installations are findings,
 * never thrown errors.
 *
 * @param given.job a job as the reader gives it, with the defaults it filled
 * @param given.basis the adopted code; the unamended edition of the job when left out
 */
export function design(given: { readonly job: Job; readonly basis?: Basis; readonly assumptions?: readonly Assumption[] }): Design {
  const { job } = given;
  const basis = given.basis ?? unamended(job.code.edition);
  // 1. circuits: overcurrent, conductors, drop, grounding, raceways, boxes
  const circuits = job.service.panel.circuits.map((circuit) => designCircuit(circuit, job, basis));
  // 2. the service with and without them
  const service = serviceLoad(
    job,
    circuits.map((c) => c.designed),
    basis.edition,
  );
  const designed: DesignedJob = {
    job,
    edition: basis.edition,
    assumptions: [...(given.assumptions ?? []), ...circuits.flatMap((c) => c.assumptions), ...service.assumptions],
    service: service.load,
    circuits: circuits.map((c) => c.designed),
  };
  // 3. every check
  const findings = runChecks({ job, basis, design: designed });
  return { ...designed, findings, ready: !findings.some((finding) => finding.verdict === "fail") };
}
