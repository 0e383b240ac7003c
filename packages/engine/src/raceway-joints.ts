import { everyEdition } from "./basis/edition.js";
import type { DesignedRun, DesignedSegment } from "./designed.js";
import { pullsOf } from "./sizing/pull-groups.js";
import { couples } from "./tables/raceway-kind.js";

/** Two stretches whose raceways do not simply couple: of unlike trade size, or of kinds that need a fitting made for both. */
export interface RacewayJoint {
  readonly before: DesignedSegment;
  readonly after: DesignedSegment;
  /** "1 in PVC-40 meets 1-1/4 in PVC-80". */
  readonly says: string;
}

/** What asks a fitting between them. */
export const UNLIKE_JOINT = { sections: everyEdition("300.15(F)"), standing: "memory" } as const;

/** Where unlike raceways meet within one pull, with no box between. */
export function racewayJoints({ run, segments }: Pick<DesignedRun, "run" | "segments">): readonly RacewayJoint[] {
  return pullsOf(run).flatMap((indices) =>
    indices.slice(1).flatMap((i): RacewayJoint[] => {
      const [before, after] = [segments[i - 1]!, segments[i]!];
      const alike = before.tradeSize === after.tradeSize && couples(before.segment.method, after.segment.method);
      return alike ? [] : [{ before, after, says: `${printed(before)} meets ${printed(after)}` }];
    }),
  );
}

const printed = ({ tradeSize, segment }: DesignedSegment) => `${tradeSize === null ? "" : `${tradeSize} in `}${segment.method}`;
