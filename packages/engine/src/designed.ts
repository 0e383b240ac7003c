import type { Edition } from "./basis/edition.js";
import type { Finding } from "./checks/finding.js";
import type { Box, Circuit, Feeder, Job, Run, Segment } from "./job/schema.js";
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
  /** Amperes the terminals allow this size; null where the tables give none. */
  readonly terminal: Worked | null;
  /** Least cover of a buried stretch; null where it is not buried or the table has no such method. */
  readonly leastCover: Worked | null;
  readonly ampacity: Worked | null; // after correction, adjustment, terminals and cable limit; null where the tables give none
  readonly tradeSize: string | null;
  readonly fill: { readonly area: Worked; readonly limit: Worked; readonly percent: Worked; readonly smallest: string | null } | null;
  readonly bendTotal: number;
  readonly steps: readonly Worked[]; // every worked line in order, printable by pencil
}
/** A protected run of conductors from a panel, a circuit or a feeder, with every value worked. */
export interface DesignedRun {
  readonly run: Run;
  /** The panel it leaves. */
  readonly panel: string;
  readonly serves: string;
  readonly volts: 120 | 240;
  readonly legVolts: 120;
  readonly neutral: boolean;
  readonly terminalC: 60 | 75;
  readonly wires: 3 | 4; // incl. equipment grounding conductor
  readonly current: string; // A, at which drop is worked
  /** Amperes the terminals must carry: the load with 125 % of what is continuous. */
  readonly terminalLoad: string;
  readonly breaker: Worked; // computed rating
  readonly rating: string; // rating in use (given or computed)
  readonly load: Worked; // VA on what feeds it
  readonly segments: readonly DesignedSegment[];
  readonly drop: {
    readonly balanced: Worked;
    readonly balancedPercent: Worked;
    readonly worstLeg: Worked;
    readonly worstLegPercent: Worked;
    /** The worst-leg drops from the service to the end of this run together; null for a run that leaves the service panel. */
    readonly fromService: Worked | null;
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
export interface DesignedCircuit extends DesignedRun {
  readonly kind: "circuit";
  readonly circuit: Circuit;
}
export interface DesignedFeeder extends DesignedRun {
  readonly kind: "feeder";
  readonly feeder: Feeder;
  readonly legs: { readonly L1: Worked; readonly L2: Worked };
  readonly neutralLoad: Worked;
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
  /** Every circuit of the tree, those of the service panel first. */
  readonly circuits: readonly DesignedCircuit[];
  /** Every feeder of the tree, each before those below it. */
  readonly feeders: readonly DesignedFeeder[];
}
export interface Design extends DesignedJob {
  readonly findings: readonly Finding[];
  readonly ready: boolean;
}
