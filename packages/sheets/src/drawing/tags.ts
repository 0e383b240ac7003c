import type { Design, DesignedCircuit, DesignedFeeder } from "@branchwork/engine";

export type AnyRun = DesignedCircuit | DesignedFeeder;

/** Every run of the tree in the order they are drawn and scheduled: feeders each before what they feed, then circuits. */
export const runsOf = (design: Design): readonly AnyRun[] => [...design.feeders, ...design.circuits];

/** The tags that tie drawing, schedules and checklist together: W for a stretch of conductors, J for a box. */
export interface RunTags {
  readonly conductors: readonly string[];
  readonly boxes: readonly string[];
}

/** Tags by run id, numbered through the whole job. */
export function tagsOf(design: Design): ReadonlyMap<string, RunTags> {
  let [w, j] = [0, 0];
  return new Map(runsOf(design).map((run) => [run.run.id, { conductors: run.segments.map(() => `W${++w}`), boxes: run.boxes.map(() => `J${++j}`) }]));
}
