import { cite } from "../basis/citation.js";
import { type Edition, everyEdition } from "../basis/edition.js";
import { needsOf } from "../equipment/circuit-needs.js";
import { equipmentOf } from "../equipment/equipment-of.js";
import { workingCurrent } from "../equipment/working-current.js";
import type { Circuit, Feeder, Panel } from "../job/schema.js";
import { Decimal, decimal, print } from "../quantity.js";
import { type Worked, worked } from "../worked.js";
import { outletLoad } from "./outlet-load.js";
import { legOf } from "./panel-spaces.js";

export const LEGS = ["L1", "L2"] as const;
export type Leg = (typeof LEGS)[number];

/** One load behind a feeder, in VA, and how it stands on the legs. */
interface Part {
  readonly name: string;
  readonly va: Readonly<Record<Leg, Decimal>>;
  readonly continuousVA: Readonly<Record<Leg, Decimal>>;
  /** Between a hot and the neutral, so that the neutral carries its unbalance. */
  readonly toNeutralVA: Readonly<Record<Leg, Decimal>>;
}

export interface FeederLoad {
  readonly legs: Readonly<Record<Leg, Worked>>;
  readonly total: Worked;
  /** Amperes on the heavier leg. */
  readonly amperes: Worked;
  readonly continuousAmperes: string;
  readonly neutral: Worked;
  /** New load on what feeds it: the total less what the fed panel carried already. */
  readonly addedVA: string;
  readonly counted: readonly string[];
  readonly leftOut: readonly string[];
}

const LEG_VOLTS = 120;
/** Outlets that an RV stand offers one vehicle; whatever else its panel feeds counts beside them. */
const RV_STAND: readonly Circuit["serves"][] = ["rv-50", "rv-30", "receptacle-20", "receptacle-15"];
const FEEDER = { sections: { "2017": "220.40", "2020": "220.40", "2023": "220.40", "2026": "120.40" }, standing: "memory" } as const;
const NEUTRAL = { sections: { "2017": "220.61(A)", "2020": "220.61(A)", "2023": "220.61(A)", "2026": "120.61(A)" }, standing: "memory" } as const;
const SITE = { sections: everyEdition("551.73(A)"), standing: "published" } as const;

/**
 * The load of a feeder in VA on each leg, by what its panel feeds: a two-pole load half on each leg, a one-pole load on the leg of
 * its space, what the panel carries already even on both. No demand factor, but with `rv-site` the outlets of one RV stand count
 * once, by the largest of them; other circuits of that panel count whole.
 */
export function feederLoad(feeder: Feeder, edition: Edition): FeederLoad {
  const { counted, leftOut } = partsOf(feeder, edition);
  const id = `${feeder.id}.load`;
  const siteRule = leftOut.length > 0 ? [cite(SITE, edition)!] : [];
  const on = (leg: Leg) =>
    worked({
      id: `${id}.${leg}`,
      label: `Load on ${leg}`,
      value: sum(counted.map((p) => p.va[leg])).toFixed(),
      unit: "VA",
      expression: counted.map((p) => `${print(p.va[leg])} VA (${p.name})`).join(" + ") || "0 VA",
      citations: [cite(FEEDER, edition)!, ...siteRule],
      edition,
    });
  const legs = { L1: on("L1"), L2: on("L2") };
  const heavier: Leg = decimal(legs.L2.value).gt(legs.L1.value) ? "L2" : "L1";
  const total = worked({
    id: `${id}.total`,
    label: "Load of the feeder",
    value: decimal(legs.L1.value).plus(legs.L2.value).toFixed(),
    unit: "VA",
    expression: `${print(legs.L1.value)} VA + ${print(legs.L2.value)} VA`,
    inputs: [legs.L1.id, legs.L2.id],
    edition,
  });
  const amperes = worked({
    id: `${id}.amperes`,
    label: `Current on the heavier leg, ${heavier}`,
    value: decimal(legs[heavier].value).div(LEG_VOLTS).toSignificantDigits(12).toFixed(),
    unit: "A",
    expression: `${print(legs[heavier].value)} VA / ${LEG_VOLTS} V`,
    inputs: [legs[heavier].id],
    edition,
  });
  const neutrals = LEGS.map((leg) => sum(counted.map((p) => p.toNeutralVA[leg])));
  const neutral = worked({
    id: `${id}.neutral`,
    label: "Largest unbalanced load on the neutral",
    value: Decimal.max(...neutrals)
      .div(LEG_VOLTS)
      .toSignificantDigits(12)
      .toFixed(),
    unit: "A",
    expression: `max(${print(neutrals[0]!)} VA; ${print(neutrals[1]!)} VA) / ${LEG_VOLTS} V`,
    citations: [cite(NEUTRAL, edition)!],
    edition,
  });
  return {
    legs,
    total,
    amperes,
    continuousAmperes: sum(counted.map((p) => p.continuousVA[heavier]))
      .div(LEG_VOLTS)
      .toSignificantDigits(12)
      .toFixed(),
    neutral,
    addedVA: decimal(total.value).minus(carriedAlready(feeder.panel)).toFixed(),
    counted: counted.map((p) => p.name),
    leftOut: leftOut.map((p) => p.name),
  };
}

function partsOf(feeder: Feeder, edition: Edition): { readonly counted: readonly Part[]; readonly leftOut: readonly Part[] } {
  const circuits = feeder.panel.circuits.map((circuit) => circuitPart(circuit, edition));
  const below = feeder.panel.feeders.map((inner) => feederPart(inner, edition));
  const already = feeder.panel.existing_load === undefined ? [] : [evenPart(`${feeder.panel.name} as it stands`, decimal(feeder.panel.existing_load))];
  const stand = feeder.demand === "rv-site" ? circuits.filter((_, i) => RV_STAND.includes(feeder.panel.circuits[i]!.serves)) : [];
  const whole = (part: Part) => part.va.L1.plus(part.va.L2);
  const largest = stand.reduce<Part | null>((a, b) => (a === null || whole(b).gt(whole(a)) ? b : a), null);
  const leftOut = stand.filter((part) => part !== largest);
  return { counted: [...already, ...circuits.filter((part) => !leftOut.includes(part)), ...below], leftOut };
}

const carriedAlready = (panel: Panel): Decimal => sum([decimal(panel.existing_load ?? 0), ...panel.feeders.map((inner) => carriedAlready(inner.panel))]);

function circuitPart(circuit: Circuit, edition: Edition): Part {
  const needs = needsOf(circuit);
  const amperes = workingCurrent(circuit, equipmentOf(circuit, edition));
  const va = decimal(outletLoad({ circuit, amperes, edition }).load.value);
  const legs = needs.poles === 2 ? half(va) : onLeg(legOf(circuit.breaker.spaces[0]!), va);
  return { name: circuit.name, va: legs, continuousVA: needs.continuous ? legs : NOTHING, toNeutralVA: needs.neutral ? legs : NOTHING };
}

function feederPart(feeder: Feeder, edition: Edition): Part {
  const parts = partsOf(feeder, edition).counted;
  const add = (pick: (part: Part) => Readonly<Record<Leg, Decimal>>) => ({
    L1: sum(parts.map((p) => pick(p).L1)),
    L2: sum(parts.map((p) => pick(p).L2)),
  });
  return { name: feeder.name, va: add((p) => p.va), continuousVA: add((p) => p.continuousVA), toNeutralVA: add((p) => p.toNeutralVA) };
}

const NOTHING: Readonly<Record<Leg, Decimal>> = { L1: decimal(0), L2: decimal(0) };
const half = (va: Decimal) => ({ L1: va.div(2), L2: va.div(2) });
const onLeg = (leg: Leg, va: Decimal) => ({ ...NOTHING, [leg]: va });
const evenPart = (name: string, va: Decimal): Part => ({ name, va: half(va), continuousVA: NOTHING, toNeutralVA: half(va) });
const sum = (values: readonly Decimal[]) => values.reduce((total, value) => total.plus(value), decimal(0));
