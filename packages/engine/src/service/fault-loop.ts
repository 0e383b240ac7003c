import { cite, citeOther } from "../basis/citation.js";
import { type Edition, everyEdition } from "../basis/edition.js";
import { decimal, type Numeric, print } from "../quantity.js";
import { type Worked, worked } from "../worked.js";
import { type FaultGiven, type FaultLevel, faultCurrents } from "./fault-current.js";

const PATH = { sections: everyEdition("250.4(A)(5)"), standing: "published" } as const;
/** Multiples of its rating between which a molded-case breaker's instantaneous trip may lie. Common practice, no source. */
export const PRACTICE_TRIP_MULTIPLES = ["5", "10"] as const;
const TRIP_CITE = citeOther("Instantaneous trip", "5 to 10 times the rating where the maker's curve is not at hand; a maker's may be higher", "practice");

export interface FaultLoop {
  readonly loop: FaultLevel;
  readonly multiple: Worked;
  /** For each trip multiple asked: the current it takes and whether the fault reaches it. Says nothing of how long a breaker takes. */
  readonly trips: readonly { readonly multiple: string; readonly amperes: Worked; readonly reached: boolean }[];
  /** `at-once`: reaches the highest multiple. `may-delay`: reaches some. `delayed`: none; the thermal part alone opens the circuit. */
  readonly result: "at-once" | "may-delay" | "delayed";
}

/**
 * Ground-fault loop at an outlet: source, hot and equipment grounding conductor (the neutral ahead of the main bonding jumper), at the
 * conductor temperatures of the segments (75 °C loaded, 25 °C cold); its current, and that as a multiple of the breaker's rating (A).
 * `tripMultiples` from the maker's curve; 5 and 10 are common practice. Null as faultCurrents. 250.4(A)(5).
 */
export function faultLoop(given: Omit<FaultGiven, "path"> & { readonly breaker: Numeric; readonly tripMultiples?: readonly Numeric[] }): FaultLoop | null {
  const loop = faultCurrents({ ...given, path: "line-to-ground" })?.at(-1);
  return loop === undefined ? null : loopAtBreaker({ ...given, loop });
}

/** {@link faultLoop} where the loop is worked already. */
export function loopAtBreaker(given: {
  readonly id: string;
  readonly loop: FaultLevel;
  readonly breaker: Numeric;
  readonly tripMultiples?: readonly Numeric[];
  readonly edition: Edition;
}): FaultLoop {
  const { id, loop, breaker, edition } = given;
  const multiple = worked({
    id: `${id}.multiple`,
    label: "Ground-fault current as a multiple of the breaker rating",
    value: decimal(loop.amperes.value).div(breaker).toSignificantDigits(16).toFixed(),
    unit: "factor",
    expression: `${print(loop.amperes.value, 4)} A / ${print(breaker)} A`,
    inputs: [loop.amperes.id],
    citations: [cite(PATH, edition)!],
    edition,
  });
  const trips = (given.tripMultiples ?? PRACTICE_TRIP_MULTIPLES).map((times) => {
    const amperes = worked({
      id: `${id}.trip.${decimal(times).toFixed()}`,
      label: `Instantaneous trip at ${print(times)} times the rating`,
      value: decimal(breaker).times(times).toFixed(),
      unit: "A",
      expression: `${print(breaker)} A × ${print(times)}`,
      citations: given.tripMultiples === undefined ? [TRIP_CITE] : [],
      edition,
    });
    return { multiple: decimal(times).toFixed(), amperes, reached: decimal(loop.amperes.value).gte(amperes.value) };
  });
  const result = trips.every((trip) => trip.reached) ? "at-once" : trips.some((trip) => trip.reached) ? "may-delay" : "delayed";
  return { loop, multiple, trips, result };
}
