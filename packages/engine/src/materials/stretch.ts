import type { Edition } from "../basis/edition.js";
import type { DesignedCircuit, DesignedFeeder, DesignedRun, DesignedSegment } from "../designed.js";
import type { Run } from "../job/schema.js";
import type { Allowances } from "./allowances.js";

/** What an end of a segment meets: its panel, a box, the equipment, or the next segment with no box between. */
export type End = "panel" | "box" | "equipment" | "joined";

/** One segment with what decides its materials: its ends and the allowances. */
export interface Stretch {
  readonly id: string;
  readonly run: DesignedRun;
  readonly segment: DesignedSegment;
  readonly start: End;
  readonly end: End;
  readonly allowances: Allowances;
  readonly edition: Edition;
}

/** What the ends of a segment meet. A feeder ends at a panel; a circuit at its last box or at the equipment. */
export function endsOf({ kind, run }: { readonly kind: "circuit" | "feeder"; readonly run: Run }, i: number): { readonly start: End; readonly end: End } {
  const boxAfter = (at: number) => run.boxes.some((box) => box.after === run.route[at]?.name);
  const last = i === run.route.length - 1;
  return {
    start: i === 0 ? "panel" : boxAfter(i - 1) ? "box" : "joined",
    end: boxAfter(i) ? "box" : !last ? "joined" : kind === "feeder" ? "panel" : "equipment",
  };
}

/** The stretches of a run in order. */
export function stretchesOf(run: DesignedCircuit | DesignedFeeder, allowances: Allowances, edition: Edition): readonly Stretch[] {
  return run.segments.map((segment, i) => ({ id: `${run.run.id}.${i + 1}`, run, segment, ...endsOf(run, i), allowances, edition }));
}
