import type { Edition } from "./edition.js";

/** Why the jurisdiction has it so, and where that stands. */
export interface LocalReason {
  readonly reason: string;
  readonly citation: string;
}

/** Wiring methods that alone may be used in some places; `places` and `methods` are those of a job's route. */
export interface MethodLimit extends LocalReason {
  readonly places: readonly string[];
  readonly methods: readonly string[];
}

/** A verdict that the jurisdiction makes harder or softer than the unamended code's. */
export interface ChangedVerdict extends LocalReason {
  readonly from: "fail" | "caution" | "needs-person";
  readonly to: "fail" | "caution" | "needs-person";
}

/** Something a person has to look at here that the code does not ask. */
export interface AddedCheck extends LocalReason {
  readonly id: string;
  readonly title: string;
  readonly look: string;
  /** Only where something is buried. */
  readonly onlyTrench: boolean;
}

/** Voltage drop as the jurisdiction has it: per cent, and whether more than that fails or is a caution. */
export interface LocalDrop extends LocalReason {
  readonly limitPercent: number;
  readonly wholeWayPercent: number;
  readonly required: boolean;
}

/** What the adopted code says here: an edition and what the jurisdiction amended, each with its reason. */
export interface Basis {
  readonly edition: Edition;
  readonly waivedChecks: Readonly<Record<string, LocalReason>>;
  readonly changedVerdicts: Readonly<Record<string, ChangedVerdict>>;
  readonly addedChecks: readonly AddedCheck[];
  /** Least cover in inches set by the jurisdiction for a location row of the cover table; larger than the code's. */
  readonly leastCover: Readonly<Record<string, { readonly inches: number; readonly replaces: number; readonly citation: string }>>;
  readonly methodLimits: readonly MethodLimit[];
  /** Methods that alone may come out of the ground. */
  readonly riserMethods: (LocalReason & { readonly methods: readonly string[] }) | null;
  readonly drop: LocalDrop | null;
  /** GFCI is not asked of an RV outlet that is listed and labelled as one. */
  readonly gfciRelief: LocalReason | null;
  /** Load calculation methods that alone are taken. */
  readonly loadMethods: (LocalReason & { readonly methods: readonly string[] }) | null;
}

/** The informational notes' figures: a branch circuit or feeder, and both together. 210.19(A), 215.2(A) (from memory). */
export const ADVISED_DROP = { limitPercent: 3, wholeWayPercent: 5 } as const;

/** The unamended code of one edition. */
export function unamended(edition: Edition): Basis {
  return {
    edition,
    waivedChecks: {},
    changedVerdicts: {},
    addedChecks: [],
    leastCover: {},
    methodLimits: [],
    riserMethods: null,
    drop: null,
    gfciRelief: null,
    loadMethods: null,
  };
}
