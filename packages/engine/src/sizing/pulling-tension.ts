import { citeOther } from "../basis/citation.js";
import { Decimal, decimal, type Numeric, print } from "../quantity.js";
import { type Worked, worked } from "../worked.js";

/** None of this is the electrical code's: it is mechanics; the bend is Euler's rope on a drum. */
const STRAIGHT = citeOther("Mechanics of a cable pull", "straight: T = T1 + w L μ", "memory");
const BEND = citeOther("Mechanics of a cable pull", "bend: T = T1 e^(μθ)", "memory");
const RISE = citeOther("Mechanics of a cable pull", "climb adds the weight of the rise", "memory");
const SIDEWALL = citeOther("Mechanics of a cable pull", "sidewall pressure: P = T / R", "memory");

/** Lengths in ft, `riseFt` the climb in the direction of the pull (less than 0 going down); a bend's radius in in, to its centre line. */
export type PullPart =
  | { readonly kind: "straight"; readonly feet: Numeric; readonly riseFt?: Numeric }
  | { readonly kind: "bend"; readonly degrees: Numeric; readonly radiusIn: Numeric };

export interface PullingTension {
  /** Tension after each part, lbf, in order of the pull. */
  readonly steps: readonly Worked[];
  /** Pressure on the outside of each bend, lbf/ft. */
  readonly sidewalls: readonly Worked[];
  readonly end: Worked;
}

/**
 * Tension along a pull, from where the conductors go in to where they are pulled out. `weight` is of all conductors together, lb/ft;
 * `friction` 0.5 is a usual dry figure, 0.35 with lubricant (common practice). `pressing` is the factor of `wedgingFactor`, 1 when left out.
 * At least one part.
 */
export function pullingTension(given: {
  readonly id: string;
  readonly parts: readonly PullPart[];
  readonly weight: Numeric;
  readonly friction: Numeric;
  readonly pressing?: Numeric;
  /** Held back at the reel, lbf. */
  readonly startLbf?: Numeric;
}): PullingTension {
  if (given.parts.length === 0) throw new RangeError("a pull has at least one part");
  const drag = decimal(given.friction).times(given.pressing ?? 1);
  const steps: Worked[] = [];
  const sidewalls: Worked[] = [];
  let tension = decimal(given.startLbf ?? 0);
  for (const [i, part] of given.parts.entries()) {
    const at = { id: `${given.id}.${i + 1}`, before: tension, inputs: steps.slice(-1).map((step) => step.id), drag };
    const step = part.kind === "straight" ? straight(at, part, decimal(given.weight)) : bend(at, part);
    steps.push(step);
    tension = decimal(step.value);
    if (part.kind === "bend") sidewalls.push(sidewall(`${given.id}.${i + 1}.sidewall`, step, part.radiusIn));
  }
  return { steps, sidewalls, end: steps.at(-1)! };
}

/** Where a part begins: the tension there (lbf), the line that gave it, and friction with what presses. */
interface At {
  readonly id: string;
  readonly before: Decimal;
  readonly inputs: readonly string[];
  readonly drag: Decimal;
}

function straight({ id, before, inputs, drag }: At, part: Extract<PullPart, { kind: "straight" }>, weight: Decimal): Worked {
  const rise = decimal(part.riseFt ?? 0);
  const run = rise.isZero() ? decimal(part.feet) : levelRun(decimal(part.feet), rise);
  // A cable is not pushed: going down the reel holds it back, so tension never falls below nothing.
  const after = Decimal.max(0, before.plus(weight.times(drag.times(run).plus(rise))));
  const climb = rise.isZero() ? "" : ` + ${print(weight, 4)} × ${rise.isNegative() ? `(${print(rise)})` : print(rise)} ft`;
  return worked({
    id,
    label: `Tension after ${print(part.feet)} ft straight`,
    value: after.toSignificantDigits(8).toFixed(),
    unit: "lbf",
    expression: `max(0, ${print(before)} lbf + ${print(weight, 4)} × ${print(run)} ft × ${print(drag, 4)}${climb})`,
    inputs,
    citations: rise.isZero() ? [STRAIGHT] : [STRAIGHT, RISE],
  });
}

/** What a stretch covers on the level. */
function levelRun(length: Decimal, rise: Decimal): Decimal {
  const squared = length.pow(2).minus(rise.pow(2));
  if (squared.isNegative()) throw new RangeError("a stretch cannot climb more than its length");
  return squared.sqrt();
}

const PI = Decimal.acos(-1);

function bend({ id, before, inputs, drag }: At, part: Extract<PullPart, { kind: "bend" }>): Worked {
  const radians = decimal(part.degrees).times(PI).div(180);
  return worked({
    id,
    label: `Tension after a bend of ${print(part.degrees)}°`,
    value: multiplied(before, drag.times(radians)),
    unit: "lbf",
    expression: `${print(before)} lbf × 2.71828 ^ (${print(drag, 4)} × ${print(radians, 4)})`,
    inputs,
    citations: [BEND],
  });
}

/**
 * A tension × e^power to eight significant digits. An exponential to 34 digits is dear, so doubles do, but where an error of theirs
 * (under one part in 10¹⁴) could turn the last digit.
 */
export function multiplied(before: Decimal, power: Decimal): string {
  const near = before.toNumber() * Math.exp(power.toNumber());
  const [below, above] = [near * (1 - 1e-13), near * (1 + 1e-13)].map((value) => value.toPrecision(8));
  return (below === above && Number.isFinite(near) ? decimal(below!) : before.times(power.exp()).toSignificantDigits(8)).toFixed();
}

function sidewall(id: string, after: Worked, radiusIn: Numeric): Worked {
  if (decimal(radiusIn).lte(0)) throw new RangeError("a bend has a radius");
  return worked({
    id,
    label: `Sidewall pressure in a bend of ${print(radiusIn)} in radius`,
    value: decimal(after.value).times(12).div(radiusIn).toSignificantDigits(8).toFixed(),
    unit: "lbf/ft",
    expression: `${print(after.value)} lbf / (${print(radiusIn)} in / 12)`,
    inputs: [after.id],
    citations: [SIDEWALL],
  });
}
