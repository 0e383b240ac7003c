import { citeOther } from "../basis/citation.js";
import { type Decimal, decimal, type Numeric, print } from "../quantity.js";
import type { Impedance } from "../sizing/impedance.js";
import { type Worked, worked } from "../worked.js";

/**
 * What feeds a fault: a 120/240 V center-tapped source. `transformer`: its nameplate, behind an infinite primary, or behind `primaryAmperes` of fault current given by
 * the utility on the high side. `utility`: the fault current the utility states at the service point on the secondary.
 */
export type FaultSource =
  | {
      readonly kind: "transformer";
      readonly kVA: Numeric;
      readonly percentZ: Numeric;
      readonly xOverR?: Numeric;
      /** Taken off the nameplate impedance for its making tolerance, per cent: 0 when not given. Less than nothing is added to it. */
      readonly tolerancePercent?: Numeric;
      /** Impedance ahead of it taken as this per cent of the transformer's own rating, where nobody gives the primary's fault current. */
      readonly primaryPercent?: Numeric;
      readonly primary?: { readonly amperes: Numeric; readonly volts: Numeric; readonly xOverR?: Numeric };
    }
  | { readonly kind: "utility"; readonly amperes: Numeric; readonly lineToNeutralAmperes?: Numeric; readonly xOverR?: Numeric };

/** X/R taken for a source that states none. Common practice, no source. */
export const PRACTICE_X_OVER_R = "1.5";
const X_OVER_R_CITE = citeOther("X/R of the source", `taken as ${PRACTICE_X_OVER_R} where none is given`, "practice");
/** One half of a center-tapped secondary: resistance 1.5 times, reactance 1.2 times a quarter of the whole; what is ahead of it, a quarter. */
const HALF = { own: { r: "0.375", x: "0.3" }, ahead: { r: "0.25", x: "0.25" } } as const;
const WHOLE = { own: { r: "1", x: "1" }, ahead: { r: "1", x: "1" } } as const;
const HALF_CITE = citeOther("Center-tapped secondary", "line to neutral: R × 1.5 / 4, X × 1.2 / 4", "memory");

export interface SourceImpedance {
  readonly impedance: Impedance;
  /** Ohms of the source as named, then resistance and reactance in the fault's path. */
  readonly steps: readonly Worked[];
}

/** One part of a source: its ohms at the secondary volts line to line, their X/R, and which factors bring it into half a winding. */
interface Part {
  readonly ohms: Worked;
  readonly xOverR: Numeric;
  readonly given: boolean;
  readonly in: { readonly r: string; readonly x: string };
}

/**
 * Resistance and reactance of a source in ohms, at `volts` line to line, in the path of a fault line to line or through the neutral.
 * A utility's figure is taken as at the transformer unless it gives one to neutral too: that errs to the higher current.
 */
export function sourceImpedance(given: {
  readonly id: string;
  readonly source: FaultSource;
  readonly volts: Numeric;
  readonly through: "lines" | "neutral";
}): SourceImpedance {
  const { id, source, volts, through } = given;
  const stated = source.kind === "utility" && through === "neutral" ? source.lineToNeutralAmperes : undefined;
  const factors = through === "neutral" && stated === undefined ? HALF : WHOLE;
  const whole =
    source.kind === "transformer"
      ? transformer(id, source, volts)
      : utility(id, stated ?? source.amperes, stated === undefined ? decimal(volts) : decimal(volts).div(2));
  const own: Part = { ohms: whole, xOverR: source.xOverR ?? PRACTICE_X_OVER_R, given: source.xOverR !== undefined, in: factors.own };
  const ahead = source.kind === "transformer" ? aheadOf(id, source, volts, factors.ahead) : [];
  const parts = [own, ...ahead];
  const citations = [...(parts.some((part) => !part.given) ? [X_OVER_R_CITE] : []), ...(factors === HALF ? [HALF_CITE] : [])];
  const axis = (name: "r" | "x"): Worked =>
    worked({
      id: `${id}.${name === "r" ? "resistance" : "reactance"}`,
      label: `Source ${name === "r" ? "resistance" : "reactance"}, ${through === "lines" ? "line to line" : "line to neutral"}`,
      value: parts
        .reduce((sum, part) => sum.plus(ohmsOf(part, name)), decimal(0))
        .toSignificantDigits(20)
        .toFixed(),
      unit: "ohm",
      expression: parts.map((part) => shown(part, name)).join(" + "),
      inputs: parts.map((part) => part.ohms.id),
      citations,
    });
  const [r, x] = [axis("r"), axis("x")];
  return { impedance: { r: decimal(r.value), x: decimal(x.value) }, steps: [...parts.map((part) => part.ohms), r, x] };
}

function ohmsOf({ ohms, xOverR, in: factor }: Part, axis: "r" | "x"): Decimal {
  const r = decimal(ohms.value).div(decimal(xOverR).pow(2).plus(1).sqrt());
  return (axis === "r" ? r : r.times(xOverR)).times(factor[axis]);
}

function shown({ ohms, xOverR, in: factor }: Part, axis: "r" | "x"): string {
  const ratio = print(xOverR, 4);
  return `${print(ohms.value, 8)} Ω${axis === "x" ? ` × ${ratio}` : ""} / √(1 + ${ratio} × ${ratio})${factor[axis] === "1" ? "" : ` × ${factor[axis]}`}`;
}

function transformer(id: string, source: Extract<FaultSource, { kind: "transformer" }>, volts: Numeric): Worked {
  const keep = decimal(100)
    .minus(source.tolerancePercent ?? 0)
    .div(100);
  const value = decimal(volts).pow(2).div(decimal(source.kVA).times(1000)).times(source.percentZ).div(100).times(keep);
  return worked({
    id: `${id}.ohms`,
    label: "Transformer impedance, line to line",
    value: value.toSignificantDigits(20).toFixed(),
    unit: "ohm",
    expression: `${print(volts)} V × ${print(volts)} V / (${print(source.kVA, 4)} × 1,000 VA) × ${print(source.percentZ, 4)} / 100${keep.eq(1) ? "" : ` × ${print(keep, 4)}`}`,
    citations: [citeOther("Transformer nameplate", "kVA and per cent impedance as given", "practice")],
  });
}

function utility(id: string, amperes: Numeric, volts: Decimal): Worked {
  return worked({
    id: `${id}.ohms`,
    label: "Source impedance, from the utility's figure",
    value: volts.div(amperes).toSignificantDigits(20).toFixed(),
    unit: "ohm",
    expression: `${print(volts)} V / ${print(amperes)} A`,
    citations: [citeOther("Utility", "available fault current as stated", "practice")],
  });
}

type Transformer = Extract<FaultSource, { kind: "transformer" }>;

function aheadOf(id: string, source: Transformer, volts: Numeric, factor: Part["in"]): readonly Part[] {
  if (source.primary) return [primary(id, source.primary, volts, factor)];
  if (source.primaryPercent === undefined) return [];
  const ohms = worked({
    id: `${id}.primary`,
    label: "Impedance ahead of the transformer, taken",
    value: decimal(volts).pow(2).div(decimal(source.kVA).times(1000)).times(source.primaryPercent).div(100).toSignificantDigits(20).toFixed(),
    unit: "ohm",
    expression: `${print(volts)} V × ${print(volts)} V / (${print(source.kVA, 4)} × 1,000 VA) × ${print(source.primaryPercent, 4)} / 100`,
    citations: [citeOther("Primary", `taken as ${print(source.primaryPercent, 4)} % at the transformer's rating where nobody gives it`, "practice")],
  });
  return [{ ohms, xOverR: PRACTICE_X_OVER_R, given: false, in: factor }];
}

/** The high side seen from the secondary: by the square of the turns. */
function primary(id: string, high: { amperes: Numeric; volts: Numeric; xOverR?: Numeric }, low: Numeric, factor: Part["in"]): Part {
  const ohms = worked({
    id: `${id}.primary`,
    label: "Impedance ahead of the transformer, seen from its secondary",
    value: decimal(low).pow(2).div(high.volts).div(high.amperes).toSignificantDigits(20).toFixed(),
    unit: "ohm",
    expression: `${print(low)} V × ${print(low)} V / ${print(high.volts)} V / ${print(high.amperes)} A`,
    citations: [citeOther("Utility", "primary fault current as stated", "practice")],
  });
  return { ohms, xOverR: high.xOverR ?? PRACTICE_X_OVER_R, given: high.xOverR !== undefined, in: factor };
}
