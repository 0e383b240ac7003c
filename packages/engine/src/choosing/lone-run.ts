import type { Design, DesignedCircuit, DesignedFeeder } from "../designed.js";
import type { Circuit, Feeder, Job, Panel, Run, Segment } from "../job/schema.js";
import { panelsOf } from "../job/tree.js";

/** Marks put in place of names, so that a finding tells which part of a run it is about whatever the parts are called. */
export const RUN_MARK = "\u27e6run\u27e7";
export const segmentMark = (i: number) => `\u27e6segment ${i}\u27e7`;
export const boxMark = (i: number) => `\u27e6box ${i}\u27e7`;

/** A run of the job and the panel it leaves. */
export type FoundRun = { readonly panel: Panel } & ({ readonly kind: "circuit"; readonly run: Circuit } | { readonly kind: "feeder"; readonly run: Feeder });

/** Every run of the tree, each feeder before what hangs below it. */
export function runsIn(job: Job): readonly FoundRun[] {
  return panelsOf(job).flatMap(({ panel }) => [
    ...panel.feeders.map((run): FoundRun => ({ kind: "feeder", run, panel })),
    ...panel.circuits.map((run): FoundRun => ({ kind: "circuit", run, panel })),
  ]);
}

/** The job with one run changed, wherever it hangs. */
export function withRun(job: Job, id: string, change: (run: Run) => Partial<Run>): Job {
  const inPanel = (panel: Panel): Panel => ({
    ...panel,
    circuits: panel.circuits.map((circuit) => (circuit.id === id ? { ...circuit, ...change(circuit) } : circuit)),
    feeders: panel.feeders.map((feeder) => ({ ...feeder, ...(feeder.id === id ? change(feeder) : {}), panel: inPanel(feeder.panel) })),
  });
  return { ...job, service: { ...job.service, panel: inPanel(job.service.panel) } };
}

/** A run with its names replaced by marks. */
export function marked(run: Run): Partial<Run> {
  const at = (name: string) => run.route.findIndex((segment) => segment.name === name);
  return {
    name: RUN_MARK,
    route: run.route.map((segment, i) => ({ ...segment, name: segmentMark(i) })),
    boxes: run.boxes.map((box, i) => ({ ...box, name: boxMark(i), after: segmentMark(at(box.after)) })),
  };
}

/** The job with this run alone at its panel and its names marked: what is worked of its segments is the same, and quickly. */
export function loneRun(job: Job, found: FoundRun): Job {
  const panel: Panel = {
    ...found.panel,
    directory: [],
    circuits: found.kind === "circuit" ? [found.run] : [],
    feeders: found.kind === "feeder" ? [found.run] : [],
  };
  return withRun({ ...job, service: { ...job.service, panel } }, found.run.id, marked);
}

/** The run with this id as designed. Throws where the design has none: a bug of the caller. */
export function designedRun(design: Design, id: string): DesignedCircuit | DesignedFeeder {
  const run = [...design.feeders, ...design.circuits].find((each) => each.run.id === id);
  if (run === undefined) throw new RangeError(`the design has no run ${id}`);
  return run;
}

/** For each segment, the first of those joined to it with no box between: one number for each pull or length of cable. */
export function groupsOf(run: Run): readonly number[] {
  let group = 0;
  return run.route.map((_, i) => {
    const before: Segment | undefined = run.route[i - 1];
    if (before !== undefined && run.boxes.some((box) => box.after === before.name)) group = i;
    return group;
  });
}
