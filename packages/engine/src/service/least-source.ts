import { citeOther } from "../basis/citation.js";
import type { Edition } from "../basis/edition.js";
import type { Assumption } from "../designed.js";
import type { Job } from "../job/schema.js";
import { Decimal, decimal, type Numeric, print } from "../quantity.js";
import { type Worked, worked } from "../worked.js";
import { type FaultLevel, faultBehind } from "./fault-current.js";

/** Where the least source of a ground fault was had from. `bound`: from the service's own rating, where nobody said. */
export type LeastSourceBasis = "meter" | "utility" | "transformer" | "bound";

/** Volts that a leg of 120 V may lose from the top to the bottom of ANSI C84.1 range A. */
const RANGE_VOLTS = "12";
const C84 = citeOther("ANSI C84.1", "Range A, service voltage, 126 to 114 V", "published");
const WEAKEST = citeOther(
  "Weakest source",
  "the service at its rating takes the whole of range A from each leg, and the neutral is as long and as thin",
  "practice",
);
const RESISTANCE = citeOther("Source impedance", "taken whole as resistance, which adds most to that of the conductors", "practice");
const LEG_VOLTS = 120;

export interface LeastSource {
  readonly level: FaultLevel;
  readonly basis: LeastSourceBasis;
  readonly assumptions: readonly Assumption[];
}

const ID = "service.fault.loop.source";
const PATH = "service.fault";

/**
 * The least a ground fault at the service panel may draw, of a loop measured there or of the utility's least figure; null where neither
 * is given.
 */
export function statedLeast(job: Job, edition: Edition): LeastSource | null {
  const { loop_ohms, least_kA } = job.service.fault ?? {};
  if (loop_ohms !== undefined) {
    const ohms = worked({
      id: `${ID}.ohms`,
      label: "Loop impedance at the service panel, by the meter",
      value: decimal(loop_ohms).toFixed(),
      unit: "ohm",
      expression: `${print(loop_ohms, 4)} Ω`,
      citations: [citeOther("Meter reading", "hot to neutral at the service panel, as entered", "practice")],
      edition,
    });
    return { level: behind(ohms, "the service panel", edition), basis: "meter", assumptions: [RESISTIVE] };
  }
  if (least_kA === undefined) return null;
  const ohms = throughLeast(decimal(least_kA).times(1000), "the utility's least figure", edition);
  return { level: behind(ohms, "the service panel", edition), basis: "utility", assumptions: [RESISTIVE] };
}

const RESISTIVE: Assumption = { path: PATH, says: "impedance of the source in a ground fault taken whole as resistance, which adds most to the conductors'" };

function throughLeast(amperes: Decimal, from: string, edition: Edition): Worked {
  return worked({
    id: `${ID}.ohms`,
    label: `Loop impedance at the service panel, from ${from}`,
    value: decimal(LEG_VOLTS).div(amperes).toSignificantDigits(20).toFixed(),
    unit: "ohm",
    expression: `${LEG_VOLTS} V / ${print(amperes)} A`,
    citations: [citeOther("Utility", "least available fault current as stated", "practice")],
    edition,
  });
}

/**
 * A bound where nobody gave the least: a service so weak that its rating (A) takes 12 V from each leg, and as much again would be lost in
 * the neutral. Real services are stiffer. Never more than the greatest current known, `greatest`.
 */
export function leastByRating(rating: Numeric, greatest: FaultLevel, edition: Edition): LeastSource {
  const volts = decimal(RANGE_VOLTS).times(2);
  const ohms = worked({
    id: `${ID}.ohms`,
    label: "Loop impedance of the weakest source for this service",
    value: volts.div(rating).toSignificantDigits(20).toFixed(),
    unit: "ohm",
    expression: `2 × ${RANGE_VOLTS} V / ${print(rating)} A`,
    citations: [C84, WEAKEST],
    edition,
  });
  const weakest = behind(ohms, "the service panel", edition);
  const least = Decimal.min(weakest.amperes.value, greatest.amperes.value);
  const level = least.eq(weakest.amperes.value) ? weakest : greatest;
  return {
    level,
    basis: "bound",
    assumptions: [
      {
        path: PATH,
        says: `least fault current at the service panel not given: ${print(least, 0)} A taken to ground for the tripping of breakers, the weakest source a ${print(rating)} A service may have (12 V lost at its rating, ANSI C84.1 range A; common practice, no source). The utility's least figure, or the loop as measured, makes it firm (job file: fault.least_kA, fault.loop_ohms)`,
      },
    ],
  };
}

function behind(ohms: Worked, at: string, edition: Edition): FaultLevel {
  const zero = decimal(0);
  const resistance = worked({
    id: `${ID}.resistance`,
    label: "Source resistance, line to ground",
    value: ohms.value,
    unit: "ohm",
    expression: `${print(ohms.value, 8)} Ω`,
    inputs: [ohms.id],
    citations: [RESISTANCE],
    edition,
  });
  const reactance = worked({
    id: `${ID}.reactance`,
    label: "Source reactance, line to ground",
    value: "0",
    unit: "ohm",
    expression: "0 Ω",
    inputs: [ohms.id],
    citations: [RESISTANCE],
    edition,
  });
  return faultBehind({
    id: ID,
    at,
    path: "line-to-ground",
    impedance: { r: decimal(ohms.value), x: zero },
    volts: decimal(LEG_VOLTS),
    steps: [ohms, resistance, reactance],
    edition,
  });
}
