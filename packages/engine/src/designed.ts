import type { Edition } from "./basis/edition.js";
import type { Finding } from "./checks/finding.js";
import type { Box, Circuit, Job, Segment } from "./job/schema.js";
import type { Size } from "./tables/size.js";
import type { Worked } from "./worked.js";

/** One stretch of a circuit's route with every value worked. */
export interface DesignedSegment {
  readonly segment: Segment;
  readonly wet: boolean;
  readonly conductor: { readonly size: Size; readonly count: number; readonly chosen: "given" | "computed" };
  readonly grounding: { readonly size: Size; readonly chosen: "given" | "computed" | "cable" };
  /** Least size that serves this stretch and those pulled with it; null when none in the tables does. */
  readonly requiredSize: Size | null;
  readonly requiredGrounding: Size;
  readonly requiredGroundingCmil: string;
  readonly ampacity: Worked | null; // after correction, adjustment, terminals and cable limit; null where the tables give none
  readonly tradeSize: string | null;
  readonly fill: { readonly area: Worked; readonly limit: Worked; readonly percent: Worked; readonly smallest: string | null } | null;
  readonly bendTotal: number;
  readonly steps: readonly Worked[]; // every worked line in order, printable by pencil
}
export interface DesignedCircuit {
  readonly circuit: Circuit;
  readonly outlet: string;
  readonly volts: 120 | 240;
  readonly terminalC: 60 | 75;
  readonly legVolts: 120;
  readonly wires: 3 | 4; // incl. equipment grounding conductor
  readonly breaker: Worked; // computed rating
  readonly rating: string; // rating in use (given or computed)
  readonly load: Worked; // VA on the service
  readonly segments: readonly DesignedSegment[];
  readonly drop: {
    readonly balanced: Worked;
    readonly balancedPercent: Worked;
    readonly worstLeg: Worked;
    readonly worstLegPercent: Worked;
    readonly longest: readonly { readonly size: Size; readonly feet: string }[];
  };
  readonly boxes: readonly {
    readonly box: Box;
    readonly required: Worked;
    readonly byDimensions: boolean;
    readonly room: Worked | null;
    readonly nextBetter: string;
  }[];
  readonly steps: readonly Worked[];
}
export interface ServiceLoad {
  readonly without: Worked;
  readonly with: Worked;
  readonly amperes: Worked;
  readonly amperesWithout: Worked;
  readonly margin: Worked;
  readonly marginVA: Worked;
  readonly marginPercent: Worked;
  readonly steps: readonly Worked[];
  readonly method: string;
}
export interface Assumption {
  readonly path: string;
  readonly says: string;
}
export interface DesignedJob {
  readonly job: Job;
  readonly edition: Edition;
  readonly assumptions: readonly Assumption[];
  readonly service: ServiceLoad;
  readonly circuits: readonly DesignedCircuit[];
}
export interface Design extends DesignedJob {
  readonly findings: readonly Finding[];
  readonly ready: boolean;
}
