import type { Assumption } from "../designed.js";
import { print } from "../quantity.js";

/** What is added to measured lengths before anything is bought. */
export interface Allowances {
  /** Free conductor at each box or equipment end, in. The least of 300.14 is 6 in (memory). */
  readonly freeConductorIn: number;
  /** Left at each panel, ft. */
  readonly panelMakeUpFt: number;
  /** Curves and sag of what is laid, per cent of the length. */
  readonly slackPercent: number;
  /** Cut ends and spoilt pieces, per cent. */
  readonly wastePercent: number;
  /** Length of a stick of rigid raceway as sold, ft. */
  readonly stickFt: number;
  /** Wire is bought in spools of this length; null for wire cut to the foot. */
  readonly spoolFt: number | null;
  /** What one PVC expansion fitting takes up, in; the maker's figure replaces it. */
  readonly expansionTravelIn: number;
  /** Yearly span of temperature outdoors, °F. */
  readonly yearlySpanF: number;
}

export const USUAL_ALLOWANCES: Allowances = {
  freeConductorIn: 6,
  panelMakeUpFt: 3,
  slackPercent: 3,
  wastePercent: 10,
  stickFt: 10,
  spoolFt: null,
  expansionTravelIn: 4,
  yearlySpanF: 100,
};

/** Throws on what cannot be an allowance: the caller's mistake, not the job's. */
export function assertAllowances(allowances: Allowances): void {
  const { stickFt, spoolFt, expansionTravelIn, ...rest } = allowances;
  const nothingLess = Object.entries(rest).find(([, value]) => !Number.isFinite(value) || value < 0);
  const nothing = Object.entries({ stickFt, spoolFt: spoolFt ?? 1, expansionTravelIn }).find(([, value]) => !Number.isFinite(value) || value <= 0);
  const wrong = nothingLess ?? nothing;
  if (wrong) throw new RangeError(`${wrong[0]} cannot be ${wrong[1]}`);
}

/** Each allowance as a sentence of the printed assumptions. */
export function allowanceAssumptions(a: Allowances): readonly Assumption[] {
  const practice = "(common practice, no source)";
  return [
    {
      path: "materials.free-conductor",
      says: `${print(a.freeConductorIn)} in of free conductor at each box and equipment end (300.14 asks 6 in, from memory: verify)`,
    },
    { path: "materials.panel-make-up", says: `${print(a.panelMakeUpFt)} ft of each conductor left at each panel ${practice}` },
    {
      path: "materials.slack",
      says: `${print(a.slackPercent)} % slack on conductors and cables over the lengths entered, which hold rises and drops ${practice}`,
    },
    { path: "materials.waste", says: `${print(a.wastePercent)} % waste on everything bought by length ${practice}` },
    { path: "materials.stick", says: `rigid raceway in sticks of ${print(a.stickFt)} ft ${practice}` },
    { path: "materials.wire", says: a.spoolFt === null ? `wire cut to the foot ${practice}` : `wire in spools of ${print(a.spoolFt)} ft ${practice}` },
    {
      path: "materials.expansion",
      says: `one PVC expansion fitting takes up ${print(a.expansionTravelIn)} in over ${print(a.yearlySpanF)} °F a year ${practice}; the fitting's own figure replaces it`,
    },
  ];
}
