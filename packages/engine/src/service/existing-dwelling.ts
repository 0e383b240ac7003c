import { cite } from "../basis/citation.js";
import { article220, type Edition, type PerEdition } from "../basis/edition.js";
import type { Job } from "../job/schema.js";
import { Decimal, decimal, print } from "../quantity.js";
import { type Worked, worked } from "../worked.js";

const LIGHTING: PerEdition<{ vaPerSquareFoot: number; standing: "published" | "one-source" }> = {
  "2017": { vaPerSquareFoot: 3, standing: "published" },
  "2020": { vaPerSquareFoot: 3, standing: "published" },
  "2023": { vaPerSquareFoot: 3, standing: "published" },
  "2026": { vaPerSquareFoot: 2, standing: "one-source" },
};
const FIRST_TIER = 8000;

export interface ExistingDwelling {
  readonly floorAreaFt2: number;
  readonly smallApplianceCircuits: number;
  readonly laundryCircuits: number;
  /** Nameplate total of appliances in VA. */
  readonly appliancesVA: number;
  /** Largest of heating and cooling in VA. */
  readonly heatingOrCoolingVA: number;
  /** True when heating or cooling is being added: it then counts whole, outside the 8 kVA and 40 % tiers. 220.83(B). */
  readonly heatingOrCoolingAdded: boolean;
}

type Given<K extends "existing" | "dwelling"> = NonNullable<Job["service"][K]>;
const counted = (loads: readonly { readonly load: number; readonly count: number }[]) => loads.reduce((sum, { load, count }) => sum + load * count, 0);

export function existingOf(given: Given<"existing">): ExistingDwelling {
  return {
    floorAreaFt2: given.floor_area,
    smallApplianceCircuits: given.small_appliance_circuits,
    laundryCircuits: given.laundry_circuits,
    appliancesVA: counted(given.appliances),
    heatingOrCoolingVA: Math.max(given.heating?.load ?? 0, given.cooling?.load ?? 0),
    heatingOrCoolingAdded: given.heating_or_cooling_added,
  };
}

const UNKNOWN_EV_VA = 7200;

/** The loads of a dwelling told by kind, as this method takes them: every nameplate, and the larger of heating and cooling. */
export function existingFrom(given: Given<"dwelling">): ExistingDwelling {
  const of = (...kinds: readonly string[]) => given.climate.filter(({ kind }) => kinds.includes(kind)).reduce((sum, { load }) => sum + load, 0);
  const supplements = given.climate.map(({ kind, load, supplement = 0, interlocked }) =>
    kind !== "heat-pump" ? 0 : interlocked ? Math.max(0, supplement - load) : supplement,
  );
  const heating = of("heat-pump", "space-heating", "thermal-storage") + supplements.reduce((a, b) => a + b, 0);
  return {
    floorAreaFt2: given.floor_area,
    smallApplianceCircuits: given.small_appliance_circuits,
    laundryCircuits: given.laundry_circuits,
    appliancesVA: counted([...given.appliances, ...given.cooking, ...given.dryers, ...given.ev.map(({ load = UNKNOWN_EV_VA, count }) => ({ load, count }))]),
    heatingOrCoolingVA: Math.max(heating, of("cooling", "heat-pump")),
    heatingOrCoolingAdded: false,
  };
}

/**
 * Demand of an existing dwelling in VA: first 8 kVA whole, the remainder at 40 %. 220.83(A), or (B) when heating or cooling is
 * added; 120.83 in 2026, whose percentages were not seen and are carried over from memory.
 */
export function existingDwellingLoad(given: { readonly id: string; readonly dwelling: ExistingDwelling; readonly edition: Edition }): {
  readonly total: Worked;
  readonly steps: readonly Worked[];
} {
  const { id, dwelling, edition } = given;
  const lighting = LIGHTING[edition];
  const rule = {
    sections: article220(dwelling.heatingOrCoolingAdded ? "83(B)" : "83(A)"),
    standing: edition === "2026" ? ("memory" as const) : ("published" as const),
  };
  const citation = cite(rule, edition)!;
  const step = (key: string, label: string, value: Decimal, expression: string, inputs: string[] = []) =>
    worked({ id: `${id}.${key}`, label, value: value.toFixed(), unit: "VA", expression, inputs, citations: [citation], edition });
  const light = worked({
    id: `${id}.lighting`,
    label: "General lighting and receptacles",
    value: decimal(dwelling.floorAreaFt2).times(lighting.vaPerSquareFoot).toFixed(),
    unit: "VA",
    expression: `${print(dwelling.floorAreaFt2)} ft² × ${lighting.vaPerSquareFoot} VA/ft²`,
    citations: [{ ...citation, standing: lighting.standing }],
    edition,
  });
  const circuits = dwelling.smallApplianceCircuits + dwelling.laundryCircuits;
  const small = step("small-appliance", "Small-appliance and laundry circuits", decimal(1500).times(circuits), `${circuits} × 1,500 VA`);
  const appliances = step("appliances", "Appliances at nameplate", decimal(dwelling.appliancesVA), `${print(dwelling.appliancesVA)} VA`);
  const tiered = dwelling.heatingOrCoolingAdded ? 0 : dwelling.heatingOrCoolingVA;
  const climate = step(
    "climate",
    dwelling.heatingOrCoolingAdded ? "Heating or cooling, the larger, counted whole" : "Heating or cooling, the larger",
    decimal(dwelling.heatingOrCoolingVA),
    `${print(dwelling.heatingOrCoolingVA)} VA`,
  );
  const sum = decimal(light.value).plus(small.value).plus(appliances.value).plus(tiered);
  const sumStep = step(
    "sum",
    "Sum for the tiers",
    sum,
    [light, small, appliances]
      .map((s) => print(s.value))
      .concat(tiered ? [print(tiered)] : [])
      .join(" + "),
    [light.id, small.id, appliances.id, ...(tiered ? [climate.id] : [])],
  );
  const remainder = Decimal.max(0, sum.minus(FIRST_TIER));
  const tiers = step(
    "tiers",
    "First 8,000 VA whole, remainder at 40 %",
    Decimal.min(FIRST_TIER, sum).plus(remainder.times("0.4")),
    `${print(Decimal.min(FIRST_TIER, sum))} + ${print(remainder)} × 0.40`,
    [sumStep.id],
  );
  const whole = dwelling.heatingOrCoolingAdded ? dwelling.heatingOrCoolingVA : 0;
  const total = step(
    "total",
    "Existing dwelling demand",
    decimal(tiers.value).plus(whole),
    whole ? `${print(tiers.value)} + ${print(whole)}` : print(tiers.value),
    whole ? [tiers.id, climate.id] : [tiers.id],
  );
  return { total, steps: [light, small, appliances, climate, sumStep, tiers, total] };
}
