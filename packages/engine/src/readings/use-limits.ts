import { cite } from "../basis/citation.js";
import { type Edition, everyEdition } from "../basis/edition.js";
import { type Decimal, decimal, print } from "../quantity.js";
import { type Worked, worked } from "../worked.js";
import type { Appliance } from "./appliances.js";

/** What the vehicle is plugged into. Through a 50-to-30 adapter both of its legs hang on the one 120 V leg of the 30 A outlet. */
export type Hookup = "15" | "30" | "50" | "50-to-30";

const HOOKUPS: Readonly<Record<Hookup, { readonly amperes: number; readonly legs: 1 | 2; readonly says: string }>> = {
  "15": { amperes: 15, legs: 1, says: "15 A 120 V outlet" },
  "30": { amperes: 30, legs: 1, says: "30 A 125 V outlet" },
  "50": { amperes: 50, legs: 2, says: "50 A 125/250 V outlet, two legs" },
  "50-to-30": {
    amperes: 30,
    legs: 1,
    says: "50 A vehicle through an adapter on a 30 A 125 V outlet: one leg, 30 A for both sides of the vehicle, nothing that needs 240 V runs",
  },
};

const CONTINUOUS = { sections: everyEdition("210.20(A)"), standing: "memory" } as const;

export interface LegUse {
  readonly leg: 1 | 2;
  /** Amperes with what runs three hours or more at 125 %, to hold against the breaker. */
  readonly demand: Worked;
  readonly limit: number;
  readonly spare: string;
  readonly within: boolean;
}

export interface UseGiven {
  readonly hookup: Hookup;
  /** Volts at the outlet under load, as computed for it. */
  readonly volts: number;
  readonly appliances: readonly Appliance[];
  readonly edition: Edition;
}

function amperesOf(appliance: Appliance, volts: number): { readonly value: Decimal; readonly shown: string } {
  const watts = decimal(appliance.watts);
  const raw = appliance.behaves === "resistance" ? watts.times(volts).div(14400) : watts.div(volts);
  const shown = appliance.behaves === "resistance" ? `${print(watts)} W × ${print(volts)} V / (120 V × 120 V)` : `${print(watts)} W / ${print(volts)} V`;
  return appliance.continuous ? { value: raw.times("1.25"), shown: `1.25 × ${shown}` } : { value: raw, shown };
}

/** Amperes on each leg when the given appliances run together, against the breaker: 125 % of what runs three hours or more, 100 % of the rest. */
export function usedTogether({ hookup, volts, appliances, edition }: UseGiven): {
  readonly says: string;
  readonly legs: readonly LegUse[];
  readonly within: boolean;
} {
  if (!(volts > 0)) throw new RangeError(`outlet volts must be above 0, not ${volts}`);
  const { amperes: limit, legs: count, says } = HOOKUPS[hookup];
  const legs = ([1, 2] as const).slice(0, count).map((leg): LegUse => {
    const on = appliances.filter((a) => count === 1 || a.leg === leg).map((appliance) => amperesOf(appliance, volts));
    const sum = on.reduce((total, { value }) => total.plus(value), decimal(0));
    const demand = worked({
      id: `use.${hookup}.leg-${leg}`,
      label: count === 1 ? `Running together on the ${limit} A breaker` : `Running together on leg ${leg} of the ${limit} A breaker`,
      value: sum.toSignificantDigits(12).toFixed(),
      unit: "A",
      expression: on.map(({ shown }) => shown).join(" + ") || "0 A",
      citations: [cite(CONTINUOUS, edition)!],
      edition,
    });
    return { leg, demand, limit, spare: decimal(limit).minus(sum).toDecimalPlaces(1).toFixed(), within: sum.lte(limit) };
  });
  return { says, legs, within: legs.every((leg) => leg.within) };
}

/**
 * Every largest set of appliances that may run together besides those always on: nothing more of the list can be added to any of them.
 * Empty when even what is always on is too much.
 */
export function mayRunTogether(given: UseGiven): readonly { readonly appliances: readonly Appliance[]; readonly legs: readonly LegUse[] }[] {
  const always = given.appliances.filter((a) => a.always);
  const chosen = given.appliances.filter((a) => !a.always);
  if (chosen.length > 14) throw new RangeError(`at most 14 appliances to choose among, not ${chosen.length}`);
  const setOf = (mask: number): readonly Appliance[] => chosen.filter((_, i) => mask & (1 << i));
  const fits = new Set<number>();
  for (let mask = 0; mask < 1 << chosen.length; mask += 1) {
    // A set fits only where it did without its last appliance, so most of them need no sum.
    const without = mask & (mask - 1);
    if ((mask === 0 || fits.has(without)) && usedTogether({ ...given, appliances: [...always, ...setOf(mask)] }).within) fits.add(mask);
  }
  return [...fits]
    .filter((mask) => chosen.every((_, i) => mask & (1 << i) || !fits.has(mask | (1 << i))))
    .map((mask) => ({ appliances: setOf(mask), legs: usedTogether({ ...given, appliances: [...always, ...setOf(mask)] }).legs }))
    .sort((a, b) => b.appliances.length - a.appliances.length);
}
