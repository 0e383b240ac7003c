import { cite, type Rule } from "../basis/citation.js";
import { type Edition, everyEdition } from "../basis/edition.js";
import { Decimal, decimal, type Numeric, print } from "../quantity.js";
import { type Worked, worked } from "../worked.js";

const TEN_FEET: Rule = { sections: everyEdition("240.21(B)(1)"), standing: "published" };
const TWENTY_FIVE_FEET: Rule = { sections: everyEdition("240.21(B)(2)"), standing: "published" };

export type TapShortfall = "too-long" | "ampacity" | "several-devices" | "device-over-ampacity" | "not-in-raceway";

export interface FeederTap {
  readonly rule: "10 ft" | "25 ft" | null;
  /** Least ampacity of the tap conductors; null when the tap is too long for both rules. */
  readonly least: Worked | null;
  readonly short: readonly TapShortfall[];
}

/**
 * Tests a feeder tap at a house: up to 10 ft with one-tenth of the feeder's device (when it leaves the enclosure) and the load, up
 * to 25 ft with one-third and one device at its end, not over the tap's ampacity. Feet and amperes; the next size up of 240.4(B)
 * never serves a tap. Taps outdoors of any length, 240.21(B)(5), are not covered: they come out as too long.
 */
export function feederTap(given: {
  readonly id: string;
  readonly feederDevice: Numeric;
  readonly feet: Numeric;
  readonly load: Numeric;
  readonly tapAmpacity: Numeric;
  /** Rating of the device, or of the equipment, in which the tap ends. */
  readonly endRating: Numeric;
  readonly endsInOneDevice: boolean;
  readonly leavesEnclosure: boolean;
  readonly inRaceway: boolean;
  readonly edition: Edition;
}): FeederTap {
  const { id, feederDevice, load, tapAmpacity, endRating, edition } = given;
  const feet = decimal(given.feet);
  const rule = feet.lte(10) ? "10 ft" : feet.lte(25) ? "25 ft" : null;
  if (rule === null) return { rule, least: null, short: ["too-long"] };
  const share = rule === "25 ft" ? 3 : given.leavesEnclosure ? 10 : null;
  const terms = [
    { value: decimal(load), expression: `${print(load)} A` },
    ...(rule === "10 ft" ? [{ value: decimal(endRating), expression: `${print(endRating)} A` }] : []),
    ...(share === null ? [] : [{ value: decimal(feederDevice).div(share), expression: `${print(feederDevice)} A / ${share}` }]),
  ];
  const needed = Decimal.max(...terms.map((t) => t.value));
  const least = worked({
    id,
    label: `Tap conductors, least ampacity (${rule} tap)`,
    value: needed.toFixed(),
    unit: "A",
    expression: `max(${terms.map((t) => t.expression).join("; ")})`,
    citations: [cite(rule === "10 ft" ? TEN_FEET : TWENTY_FIVE_FEET, edition)!],
    edition,
  });
  const short: TapShortfall[] = [];
  if (decimal(tapAmpacity).lt(needed)) short.push("ampacity");
  if (rule === "25 ft" && !given.endsInOneDevice) short.push("several-devices");
  if (rule === "25 ft" && decimal(endRating).gt(tapAmpacity)) short.push("device-over-ampacity");
  if (given.leavesEnclosure && !given.inRaceway) short.push("not-in-raceway");
  return { rule, least, short };
}
