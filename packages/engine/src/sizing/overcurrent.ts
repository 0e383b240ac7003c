import { cite } from "../basis/citation.js";
import { type Edition, everyEdition } from "../basis/edition.js";
import { decimal, type Numeric, print } from "../quantity.js";
import { STANDARD_RATINGS } from "../tables/standard-rating.js";
import { type Worked, worked } from "../worked.js";

const CONTINUOUS = {
  branch: { sections: everyEdition("210.20(A)"), standing: "memory" },
  feeder: { sections: everyEdition("215.3"), standing: "memory" },
} as const;
const STANDARD = { sections: everyEdition("240.6(A)"), standing: "published" } as const;

/** The next standard rating at or above a current; null above 600 A, which this table does not reach. */
export function standardRatingAtLeast(amperes: Numeric, edition: Edition): number | null {
  const needed = decimal(amperes);
  return STANDARD_RATINGS[edition].find((rating) => needed.lte(rating)) ?? null;
}

/**
 * Least standard overcurrent rating for a load: noncontinuous + 125 % of continuous, then the next standard rating.
 * Amperes in and out. Throws RangeError above 600 A. 210.20(A), for a feeder 215.3, 240.6(A).
 */
export function overcurrentRating(given: {
  readonly id: string;
  readonly continuous: Numeric;
  readonly noncontinuous: Numeric;
  /** What it protects; a branch circuit unless told. */
  readonly of?: keyof typeof CONTINUOUS;
  readonly edition: Edition;
}): Worked {
  const { continuous, noncontinuous, of = "branch", edition } = given;
  const least = decimal(continuous).times("1.25").plus(noncontinuous);
  const rating = standardRatingAtLeast(least, edition);
  if (rating === null) throw new RangeError(`no standard rating up to 600 A carries ${print(least)} A`);
  return worked({
    id: given.id,
    label: "Overcurrent device, least standard rating",
    value: String(rating),
    unit: "A",
    expression: `${print(continuous)} A × 1.25 + ${print(noncontinuous)} A = ${print(least)} A`,
    rounding: "up to the next standard rating",
    citations: [cite(CONTINUOUS[of], edition)!, cite(STANDARD, edition)!],
    edition,
  });
}

/** As above, and never without an answer: above the ratings known here, the largest of them with a label that says so. */
export function leastRating(given: Parameters<typeof overcurrentRating>[0]): Worked {
  const { id, continuous, noncontinuous, edition } = given;
  const needed = decimal(continuous).times("1.25").plus(noncontinuous);
  if (standardRatingAtLeast(needed, edition) !== null) return overcurrentRating(given);
  return beyondRatings(id, `${print(continuous)} A × 1.25 + ${print(noncontinuous)} A = ${print(needed)} A`, edition);
}

/** A stand-in where no rating known here carries the load: it fails the check of what the breaker carries. */
export function beyondRatings(id: string, expression: string, edition: Edition): Worked {
  return worked({
    id,
    label: "Overcurrent device: the load asks more than the largest rating known here",
    value: String(STANDARD_RATINGS[edition].at(-1)),
    unit: "A",
    expression,
    rounding: "down to the largest standard rating known here",
    citations: [cite(STANDARD, edition)!],
    edition,
  });
}
