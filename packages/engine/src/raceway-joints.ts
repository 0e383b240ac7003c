import type { DesignedRun, DesignedSegment } from "./designed.js";
import { pullsOf } from "./sizing/pull-groups.js";
import { conduitMaterial } from "./tables/impedance.js";

/** Two stretches whose raceways do not simply couple: of unlike trade size, or one of metal and one not. */
export interface RacewayJoint {
  readonly before: DesignedSegment;
  readonly after: DesignedSegment;
  /** "1 in PVC-40 meets 1-1/4 in PVC-80". */
  readonly says: string;
}

/** Where unlike raceways meet within one pull, with no box between. */
export function racewayJoints({ run, segments }: Pick<DesignedRun, "run" | "segments">): readonly RacewayJoint[] {
  return pullsOf(run).flatMap((indices) =>
    indices.slice(1).flatMap((i): RacewayJoint[] => {
      const [before, after] = [segments[i - 1]!, segments[i]!];
      const alike = before.tradeSize === after.tradeSize && isPlastic(before) === isPlastic(after);
      return alike ? [] : [{ before, after, says: `${printed(before)} meets ${printed(after)}` }];
    }),
  );
}

const isPlastic = ({ segment }: DesignedSegment) => conduitMaterial(segment.method) === "PVC";
const printed = ({ tradeSize, segment }: DesignedSegment) => `${tradeSize === null ? "" : `${tradeSize} in `}${segment.method}`;
