import { Decimal as Base } from "decimal.js";

/**
 * The engine's one decimal type: 34 significant digits, half-up, never the global constructor.
 * Code tables are entered as strings, so 52,620 cmil stays 52,620 and not a nearby double.
 */
export const Decimal = Base.clone({ precision: 34, rounding: Base.ROUND_HALF_UP, toExpNeg: -20, toExpPos: 40 });
export type Decimal = InstanceType<typeof Decimal>;
export type Numeric = Decimal | number | string;

export type Unit =
  | "A"
  | "V"
  | "VA"
  | "W"
  | "ohm"
  | "ft"
  | "in"
  | "in2"
  | "in3"
  | "lbf"
  | "lbf/ft"
  | "lb/ft"
  | "cmil"
  | "degC"
  | "degrees"
  | "%"
  | "kA"
  | "count"
  | "factor"
  | "AWG/kcmil"
  | "text";

/** Exact decimal from a number or numeral. Throws on anything not finite: that is a bug upstream, input is checked by the schema. */
export function decimal(value: Numeric): Decimal {
  if (typeof value === "string") return READ.get(value) ?? read(value);
  const result = value instanceof Decimal ? value : new Decimal(value);
  if (!result.isFinite()) throw new RangeError(`not a finite quantity: ${String(value)}`);
  return result;
}

/** Numerals read before: decimals never change, and a design reads the same cells of tables over and over. Bounded, so that it cannot grow without end. */
const READ = new Map<string, Decimal>();
const MOST_READ = 4096;
const LONGEST_READ = 12;

function read(numeral: string): Decimal {
  const result = new Decimal(numeral);
  if (!result.isFinite()) throw new RangeError(`not a finite quantity: ${numeral}`);
  if (numeral.length > LONGEST_READ) return result;
  if (READ.size >= MOST_READ) READ.clear();
  READ.set(numeral, result);
  return result;
}

/** How near a value worked in doubles, by a few operations of like sign, is to the truth, as a part of it: a hundred times what they lose. */
const DOUBLES_WITHIN = 1e-13;

/**
 * A value to some significant digits (ten at most), as a numeral. Where decimals are dear, as roots and powers are, doubles do: `near`
 * is the value in them, and `exact` is asked only where their error could turn the last digit.
 */
export function significant(near: number, digits: number, exact: () => Decimal): string {
  const [below, above] = [near * (1 - DOUBLES_WITHIN), near * (1 + DOUBLES_WITHIN)].map((value) => value.toPrecision(digits));
  return (below === above && Number.isFinite(near) ? decimal(below!) : exact().toSignificantDigits(digits)).toFixed();
}

const PLAIN = /^(0|[1-9]\d{0,2})$/;

// ── Named roundings ─────────────────────────────────────────────────────────
export interface Rounding {
  readonly id: string;
  readonly says: string;
  readonly section: string | null;
  readonly apply: (value: Decimal) => Decimal;
}

export const ROUNDINGS = {
  wholeAmpereHalfUp: {
    id: "wholeAmpereHalfUp",
    says: "to the nearest whole ampere; fractions under 0.5 may be dropped",
    section: "220.5(B)",
    apply: (value) => value.toDecimalPlaces(0, Base.ROUND_HALF_UP),
  },
} as const satisfies Record<string, Rounding>;

/** Prints a decimal with at most `places` digits after the point, trailing zeros dropped, thousands grouped. */
export function print(value: Numeric, places = 2): string {
  // What has no thousands and nothing to round is printed as it is written.
  if (typeof value === "string" ? PLAIN.test(value) : typeof value === "number" && Number.isInteger(value) && value >= 0 && value < 1000) return String(value);
  const exact = decimal(value);
  const rounded = (exact.decimalPlaces() > places ? exact.toDecimalPlaces(places) : exact).toFixed();
  const sign = rounded.startsWith("-") ? "-" : "";
  const point = rounded.indexOf(".");
  const whole = rounded.slice(sign.length, point < 0 ? undefined : point);
  const grouped = whole.length > 3 ? whole.replace(/\B(?=(\d{3})+$)/g, ",") : whole;
  return `${sign}${grouped}${point < 0 ? "" : rounded.slice(point)}`;
}
