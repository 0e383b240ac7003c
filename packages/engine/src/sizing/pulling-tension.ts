import { citeOther } from "../basis/citation.js";
import { Decimal, decimal, type Numeric, print, significant } from "../quantity.js";
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

export interface PullGiven {
  readonly parts: readonly PullPart[];
  readonly weight: Numeric;
  readonly friction: Numeric;
  readonly pressing?: Numeric;
  /** Held back at the reel, lbf. */
  readonly startLbf?: Numeric;
}

/** A pull in bare figures: tension after each part in lbf, and pressure on the outside of each bend in lbf/ft. */
export interface PullFigures {
  readonly after: readonly Decimal[];
  readonly sidewalls: readonly Decimal[];
}

export interface PullingTension {
  /** Tension after each part, lbf, in order of the pull. */
  readonly steps: readonly Worked[];
  /** Pressure on the outside of each bend, lbf/ft. */
  readonly sidewalls: readonly Worked[];
  readonly end: Worked;
}

/** Tension and pressure to this many digits. */
const DIGITS = 8;

/** {@link pullingTension} without its lines, for comparing ways to pull. */
export function pullFigures(given: PullGiven): PullFigures {
  if (given.parts.length === 0) throw new RangeError("a pull has at least one part");
  const drag = dragOf(given);
  const after: Decimal[] = [];
  const sidewalls: Decimal[] = [];
  let tension = decimal(given.startLbf ?? 0);
  for (const part of given.parts) {
    tension = part.kind === "straight" ? straight(tension, part, drag, decimal(given.weight)) : multiplied(tension, drag.times(radiansOf(part)));
    after.push(tension);
    if (part.kind === "bend") sidewalls.push(pressureIn(part, tension));
  }
  return { after, sidewalls };
}

/**
 * Tension along a pull, from where the conductors go in to where they are pulled out. `weight` is of all conductors together, lb/ft;
 * `friction` 0.5 is a usual dry figure, 0.35 with lubricant (common practice). `pressing` is the factor of `wedgingFactor`, 1 when left out.
 * At least one part. `figures` are those of {@link pullFigures} where they are had already.
 */
export function pullingTension(given: PullGiven & { readonly id: string }, figures: PullFigures = pullFigures(given)): PullingTension {
  const { after } = figures;
  const drag = print(dragOf(given), 4);
  const weight = print(given.weight, 4);
  const steps: Worked[] = [];
  const sidewalls: Worked[] = [];
  for (const [i, part] of given.parts.entries()) {
    const id = `${given.id}.${i + 1}`;
    const before = print(after[i - 1] ?? given.startLbf ?? 0);
    const [label, expression] = part.kind === "straight" ? writtenStraight(part, before, drag, weight) : writtenBend(part, before, drag);
    const citations = part.kind === "bend" ? [BEND] : climbs(part) ? [STRAIGHT, RISE] : [STRAIGHT];
    const step = worked({ id, label, value: after[i]!.toFixed(), unit: "lbf", expression, inputs: steps.slice(-1).map((last) => last.id), citations });
    steps.push(step);
    if (part.kind === "bend") sidewalls.push(sidewall(`${id}.sidewall`, step, part.radiusIn, figures.sidewalls[sidewalls.length]!));
  }
  return { steps, sidewalls, end: steps.at(-1)! };
}

type Straight = Extract<PullPart, { kind: "straight" }>;
type Bend = Extract<PullPart, { kind: "bend" }>;

/** Friction with what presses the conductors on the wall. */
const dragOf = ({ friction, pressing }: PullGiven) => decimal(friction).times(pressing ?? 1);
const climbs = ({ riseFt }: Straight) => riseFt !== undefined && !decimal(riseFt).isZero();

/** A cable is not pushed: going down the reel holds it back, so tension never falls below nothing. */
function straight(before: Decimal, part: Straight, drag: Decimal, weight: Decimal): Decimal {
  const pull = weight.times(drag.times(levelRun(part)).plus(part.riseFt ?? 0));
  return Decimal.max(0, before.plus(pull)).toSignificantDigits(DIGITS);
}

/** What a stretch covers on the level, ft. */
function levelRun(part: Straight): Decimal {
  const length = decimal(part.feet);
  if (!climbs(part)) return length;
  const squared = length.pow(2).minus(decimal(part.riseFt!).pow(2));
  if (squared.isNegative()) throw new RangeError("a stretch cannot climb more than its length");
  return squared.sqrt();
}

function writtenStraight(part: Straight, before: string, drag: string, weight: string): readonly [label: string, expression: string] {
  const rise = decimal(part.riseFt ?? 0);
  const climb = climbs(part) ? ` + ${weight} × ${rise.isNegative() ? `(${print(rise)})` : print(rise)} ft` : "";
  return [`Tension after ${print(part.feet)} ft straight`, `max(0, ${before} lbf + ${weight} × ${print(levelRun(part))} ft × ${drag}${climb})`];
}

const RADIANS_A_DEGREE = Decimal.acos(-1).div(180);
const radiansOf = ({ degrees }: Bend) => RADIANS_A_DEGREE.times(degrees);

/** A tension × e^power: to {@link DIGITS}, since an exponential to 34 is dear. */
export const multiplied = (before: Decimal, power: Decimal): Decimal =>
  decimal(significant(before.toNumber() * Math.exp(power.toNumber()), DIGITS, () => before.times(power.exp())));

const writtenBend = (part: Bend, before: string, drag: string): readonly [label: string, expression: string] => [
  `Tension after a bend of ${print(part.degrees)}°`,
  `${before} lbf × 2.71828 ^ (${drag} × ${print(radiansOf(part), 4)})`,
];

function pressureIn({ radiusIn }: Bend, after: Decimal): Decimal {
  if (decimal(radiusIn).lte(0)) throw new RangeError("a bend has a radius");
  return after.times(12).div(radiusIn).toSignificantDigits(DIGITS);
}

function sidewall(id: string, after: Worked, radiusIn: Numeric, pressure: Decimal): Worked {
  return worked({
    id,
    label: `Sidewall pressure in a bend of ${print(radiusIn)} in radius`,
    value: pressure.toFixed(),
    unit: "lbf/ft",
    expression: `${print(after.value)} lbf / (${print(radiusIn)} in / 12)`,
    inputs: [after.id],
    citations: [SIDEWALL],
  });
}
