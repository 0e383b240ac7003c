import type { Citation } from "../basis/citation.js";
import type { Edition } from "../basis/edition.js";
import { decimal, type Numeric } from "../quantity.js";
import { standardRatingAtLeast } from "../sizing/overcurrent.js";
import { STANDARD_RATINGS } from "../tables/standard-rating.js";
import { type Worked, worked } from "../worked.js";
import { citeKnown, knownAlike } from "./known-rule.js";

const STANDARD = knownAlike("240.6(A)", "published");

/** A least or greatest overcurrent rating and the way it was brought to a standard one. */
export interface OvercurrentBound {
  readonly rating: number;
  readonly rounds: "up" | "down" | "none";
  readonly worked: Worked;
}

interface BoundGiven {
  readonly id: string;
  readonly label: string;
  readonly amperes: Numeric;
  readonly expression: string;
  readonly inputs?: readonly string[];
  readonly citations: readonly Citation[];
  readonly edition: Edition;
}

/** The greatest standard rating at or below a current; null under the smallest rating. */
export function standardRatingAtMost(amperes: Numeric, edition: Edition): number | null {
  return STANDARD_RATINGS[edition].findLast((rating) => decimal(amperes).gte(rating)) ?? null;
}

function bound(given: BoundGiven, rating: number, rounds: OvercurrentBound["rounds"], rounding: string | null): OvercurrentBound {
  const { id, label, expression, inputs = [], citations, edition } = given;
  return {
    rating,
    rounds,
    worked: worked({
      id,
      label,
      value: String(rating),
      unit: "A",
      expression,
      inputs,
      rounding,
      citations: [...citations, ...(rounding ? [citeKnown(STANDARD, edition)] : [])],
      edition,
    }),
  };
}

/** Brought up to the next standard rating, not under 15 A; null above 600 A. */
export function boundUp(given: BoundGiven): OvercurrentBound | null {
  // A 10 A device (from 2023) is for lighting only: equipment circuits start at 15 A.
  const rating = standardRatingAtLeast(decimal(given.amperes).lt(15) ? 15 : given.amperes, given.edition);
  return rating === null ? null : bound(given, rating, "up", "up to the next standard rating");
}

/** Brought down to the standard rating below, but not under 15 A. */
export function boundDown(given: BoundGiven): OvercurrentBound {
  return bound(given, Math.max(15, standardRatingAtMost(given.amperes, given.edition) ?? 15), "down", "down to the standard rating below");
}

/** A rating that stands as marked or as the outlet's own, not rounded. */
export function boundAsGiven(given: Omit<BoundGiven, "amperes"> & { readonly amperes: number }): OvercurrentBound {
  return bound(given, given.amperes, "none", null);
}
