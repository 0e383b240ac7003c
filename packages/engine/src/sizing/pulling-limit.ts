import { citeOther } from "../basis/citation.js";
import { Decimal, decimal, type Numeric, print } from "../quantity.js";
import { type Worked, worked } from "../worked.js";

const WEDGING = citeOther("Mechanics of a cable pull", "three conductors press the wall more than their weight: 1 + 4/3 (d/(D − d))²", "memory");
/** Copper, the grip and the sidewall by the IEWC technical guide on pulling tensions; aluminum from memory. */
const METAL = {
  copper: { each: "0.008", source: citeOther("ICEA guidance as cable makers print it", "0.008 lbf a circular mil of copper", "one-source") },
  aluminum: { each: "0.006", source: citeOther("ICEA guidance as cable makers print it", "0.006 lbf a circular mil of aluminum", "memory") },
} as const;
const BASKET = citeOther("ICEA guidance as cable makers print it", "1,000 lbf on a basket grip", "one-source");
const SIDEWALL_LIMIT = citeOther("ICEA guidance as cable makers print it", "300 lbf a foot of bend radius", "one-source");

/** How much harder three or more conductors press than their weight: 1 for one or two. Bore and conductor in inches, bore the greater. */
export function wedgingFactor(given: { readonly id: string; readonly boreIn: Numeric; readonly conductorIn: Numeric; readonly count: number }): Worked {
  const gap = decimal(given.boreIn).minus(given.conductorIn);
  if (gap.lte(0)) throw new RangeError("the conductor does not go into the raceway");
  const several = given.count >= 3;
  const value = several ? decimal(given.conductorIn).div(gap).pow(2).times(4).div(3).plus(1) : decimal(1);
  const part = `(${print(given.conductorIn, 3)} in / ${print(gap, 3)} in)`;
  return worked({
    id: given.id,
    label: "Pressing factor of the conductors",
    value: value.toSignificantDigits(8).toFixed(),
    unit: "factor",
    expression: several ? `1 + 4 / 3 × ${part} × ${part}` : "1",
    citations: [WEDGING],
  });
}

/** Greatest tension the conductors may be pulled with, lbf: by their metal, and no more than the grip holds. `cmil` of one conductor, `count` of like ones. */
export function tensionLimit(given: {
  readonly id: string;
  readonly cmil: Numeric;
  readonly count: number;
  readonly material: "copper" | "aluminum";
  readonly grip: "eye" | "basket";
}): Worked {
  const { each, source } = METAL[given.material];
  const metal = decimal(given.cmil).times(given.count).times(each);
  const product = `${given.count} × ${print(given.cmil)} cmil × ${each}`;
  return worked({
    id: given.id,
    label: "Greatest pulling tension",
    value: (given.grip === "basket" ? Decimal.min(metal, 1000) : metal).toFixed(),
    unit: "lbf",
    expression: given.grip === "basket" ? `min(${product}, 1,000 lbf)` : product,
    citations: given.grip === "basket" ? [source, BASKET] : [source],
  });
}

/** Greatest sidewall pressure, lbf/ft, where the cable's maker prints none. */
export function sidewallLimit(given: { readonly id: string }): Worked {
  return worked({ id: given.id, label: "Greatest sidewall pressure", value: "300", unit: "lbf/ft", expression: "300 lbf/ft", citations: [SIDEWALL_LIMIT] });
}
