import type { Edition } from "./basis/edition.js";
import type { Finding } from "./checks/finding.js";
import type { EquipmentKind, ReceptacleForm } from "./equipment/equipment.js";
import type { OutletPlace } from "./equipment/gfci-need.js";
import type { NeutralSwitching } from "./equipment/neutral-switching.js";
import type { OvercurrentBound } from "./equipment/overcurrent-bound.js";
import type { Applies, Required, Statement } from "./equipment/statement.js";
import type { Box, Circuit, Feeder, Job, Run, Segment } from "./job/schema.js";
import type { FaultLoop } from "./service/fault-loop.js";
import type { ServiceConductor } from "./service/service-conductor.js";
import type { FaultPoint, ServiceFault } from "./service/service-fault.js";
import type { ConductorProtection } from "./sizing/conductor.js";
import type { HardPull } from "./sizing/hard-pull.js";
import type { JamRatio } from "./sizing/jam-ratio.js";
import type { PullBoxSize } from "./sizing/pull-box-size.js";
import type { SupportSpacing } from "./sizing/supports.js";
import type { Size } from "./tables/size.js";
import type { Worked } from "./worked.js";

/** One stretch of a circuit's route with every value worked. */
export interface DesignedSegment {
  readonly segment: Segment;
  readonly wet: boolean;
  readonly conductor: { readonly size: Size; readonly count: number; readonly chosen: "given" | "computed" };
  readonly grounding: { readonly size: Size; readonly chosen: "given" | "computed" | "cable" };
  /** A feeder's neutral of its own size, and what it may carry here (A; null where the tables give none); null where it is as the hots. */
  readonly neutral: { readonly size: Size; readonly ampacity: Worked | null } | null;
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
  readonly fill: {
    readonly area: Worked;
    readonly limit: Worked;
    readonly percent: Worked;
    readonly smallest: string | null;
    readonly better: string | null;
  } | null;
  readonly bendTotal: number;
  /** Equal sets in parallel; ampacity and terminal above are of all together. */
  readonly sets: number;
  /** How it is fastened above ground; null where it is buried or the tables list no such size. */
  readonly supports: (SupportSpacing & { readonly count: Worked }) | null;
  /** Least radius of a one-shot bend; null where it has no bends. */
  readonly bendRadius: Worked | null;
  /** Movement of PVC outdoors over a year. */
  readonly expansion: {
    readonly span: Worked | null;
    readonly spanF: string;
    readonly change: Worked;
    readonly byTable: Worked | null;
    readonly needed: boolean;
    readonly fittings: Worked;
  } | null;
  readonly steps: readonly Worked[]; // every worked line in order, printable by pencil
}
/** Stretches of raceway drawn in together: between two boxes. */
export interface DesignedPull {
  readonly names: readonly string[];
  readonly degrees: number;
  /** Of the stretch where wedging is likeliest; null where the tables lack raceway or conductor. */
  readonly jam: JamRatio | null;
  /** null where the raceway is too small to reckon a pull, or the tables lack a figure. */
  readonly tension: {
    readonly pulledFrom: "start" | "end";
    /** The direction, and how it is pulled: grip and friction. */
    readonly assumed: boolean;
    readonly how: string;
    /** Tension the other way, lbf, where the direction is not given. */
    readonly otherWayLbf: string | null;
    readonly end: Worked;
    readonly limit: Worked;
    readonly sidewall: Worked | null;
    readonly sidewallLimit: Worked;
    /** At most a quarter of both limits. */
    readonly light: boolean;
  } | null;
  /** Of the stretch that is hardest; null where the tables lack a figure. */
  readonly hard: HardPull | null;
  readonly steps: readonly Worked[];
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
  /** How breaker and conductor bind one another. */
  readonly protection: ConductorProtection;
  readonly rating: string; // rating in use (given or computed)
  readonly load: Worked; // VA on what feeds it
  readonly segments: readonly DesignedSegment[];
  readonly pulls: readonly DesignedPull[];
  readonly drop: {
    readonly balanced: Worked;
    readonly balancedPercent: Worked;
    readonly worstLeg: Worked;
    readonly worstLegPercent: Worked;
    /** The worst-leg drops from the service to the end of this run together; null for a run that leaves the service panel. */
    readonly fromService: Worked | null;
    /** The same between the hots, for what needs no neutral; null at the service panel and for a run of 120 V. */
    readonly fromServiceHots: Worked | null;
    readonly longest: readonly { readonly size: Size; readonly feet: string }[];
    /** Every line that leads to them, in order. */
    readonly steps: readonly Worked[];
  };
  /** Fault current along it; null where no source is given. */
  readonly fault: RunFault | null;
  readonly boxes: readonly {
    readonly box: Box;
    readonly required: Worked;
    readonly byDimensions: boolean;
    /** 4 AWG and larger: least inside dimensions, and whether the entries were taken and not given. */
    readonly dimensions: (PullBoxSize & { readonly assumed: boolean }) | null;
    /** From a terminal in it to the wall the conductors face; null without a device or where the code names no figure. */
    readonly bending: Worked | null;
    readonly room: Worked | null;
    readonly nextBetter: string;
  }[];
  readonly steps: readonly Worked[];
}
/** What the equipment or outlet of a circuit asks, ready for paper. Amperes throughout. */
export interface DesignedEquipment {
  readonly kind: EquipmentKind;
  readonly says: string;
  readonly volts: 120 | 240;
  readonly poles: 1 | 2;
  readonly neutral: boolean;
  /** null where it is hard-wired, and for an inlet. */
  readonly receptacle: ReceptacleForm | null;
  /** Where the outlet is, and whether that was worked out rather than given. */
  readonly place: OutletPlace;
  readonly placeAssumed: boolean;
  /** A generator inlet feeds the panel and adds no load. */
  readonly source: boolean;
  /** Minimum circuit ampacity, before correction and adjustment. */
  readonly ampacity: Worked;
  readonly overcurrent: { readonly least: OvercurrentBound | null; readonly most: OvercurrentBound | null };
  readonly smallConductorCap: Applies;
  readonly nextSizeUp: Applies;
  readonly disconnect: Required;
  readonly gfci: Required;
  readonly generator: { readonly transfer: Required; readonly neutralSwitching: NeutralSwitching } | null;
  readonly notes: readonly Statement[];
}
export interface DesignedCircuit extends DesignedRun {
  readonly kind: "circuit";
  /** As asked, with the current it is worked at. */
  readonly circuit: Circuit & { readonly current: number };
  readonly equipment: DesignedEquipment;
}
export interface DesignedFeeder extends DesignedRun {
  readonly kind: "feeder";
  readonly feeder: Feeder;
  readonly legs: { readonly L1: Worked; readonly L2: Worked };
  readonly neutralLoad: Worked;
}
/** Fault currents of a run in amperes. `atStart` is at the panel it leaves. Each null from where it cannot be worked. */
export interface RunFault {
  readonly atStart: { readonly lineToLine: Worked | null; readonly lineToNeutral: Worked | null };
  readonly atEnd: { readonly lineToLine: Worked | null; readonly lineToNeutral: Worked | null };
  /** Ground-fault current at the end with loaded conductors, and as a multiple of the breaker's rating. */
  readonly loop: (Pick<FaultLoop, "multiple" | "trips" | "result"> & { readonly amperes: Worked }) | null;
  /** The chains from the source to its start and to its end. */
  readonly start: FaultPoint;
  readonly end: FaultPoint;
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
  /** Amperes of the neutral with the new work; null where the loads are not told by kind. */
  readonly neutral: Worked | null;
  /** Least standard service for the whole house; null where the service stands already and only the new work is added. */
  readonly leastRating: Worked | null;
  /** The new loads under an energy management system; null where there is none or the edition has no such count. */
  readonly managed: Worked | null;
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
  /** Fault current at the service panel; null where no source is given. */
  readonly serviceFault: ServiceFault | null;
  /** Service conductors and grounding electrode conductor; null where they are not given. */
  readonly serviceConductor: ServiceConductor | null;
  /** Every circuit of the tree, those of the service panel first. */
  readonly circuits: readonly DesignedCircuit[];
  /** Every feeder of the tree, each before those below it. */
  readonly feeders: readonly DesignedFeeder[];
}
export interface Design extends DesignedJob {
  readonly findings: readonly Finding[];
  readonly ready: boolean;
}
