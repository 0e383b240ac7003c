import type { Edition } from "../basis/edition.js";
import type { Job } from "../job/schema.js";
import { decimal, print } from "../quantity.js";
import type { LoadSum } from "./load-line.js";
import { neutralLoad } from "./neutral-load.js";
import type { NewLoad, NewLoadKind } from "./new-load.js";
import type { ClimateLoad } from "./optional-climate.js";
import { optionalDwellingLoad } from "./optional-dwelling.js";
import { type StandardDwelling, standardDwellingLoad } from "./standard-dwelling.js";

type Dwelling = NonNullable<Job["service"]["dwelling"]>;

const times = <T>(count: number, one: T): T[] => Array.from({ length: count }, () => one);
const total = (loads: readonly { readonly load: number }[]) => loads.reduce((sum, { load }) => sum + load, 0);
const vaOf = (loads: readonly NewLoad[], ...kinds: readonly NewLoadKind[]) =>
  loads.filter((load) => kinds.includes(load.kind)).map((load) => ({ name: load.name, va: Number(load.va), motor: load.kind === "motor" }));
const sumVA = (loads: readonly { readonly va: number }[]) => loads.reduce((sum, { va }) => sum + va, 0);
const nameplatesOf = (loads: readonly NewLoad[], kind: NewLoadKind) => loads.filter((load) => load.kind === kind).flatMap((load) => load.nameplates);
const evBehindFeeders = (loads: readonly NewLoad[]) => loads.map((load) => Number(load.evVA)).filter((va) => va > 0);
/** What a feeder brings besides EV supply equipment, and every other new load whole. */
const withoutEv = (loads: readonly NewLoad[]) => loads.map((load) => ({ ...load, va: decimal(load.va).minus(load.evVA).toFixed() }));
const isKind =
  (...kinds: readonly Dwelling["climate"][number]["kind"][]) =>
  (load: Dwelling["climate"][number]) =>
    kinds.includes(load.kind);

const appliancesOf = (dwelling: Dwelling) => dwelling.appliances.flatMap((a) => times(a.count, { name: a.name, va: a.load, motor: a.motor }));
const nameplates = (loads: readonly { readonly load: number; readonly count: number }[]) => loads.flatMap(({ load, count }) => times(count, load));

function standardOf(dwelling: Dwelling, added: readonly NewLoad[]): StandardDwelling {
  const heatPumps = dwelling.climate.filter(isKind("heat-pump"));
  const warming = heatPumps.map(({ load, supplement = 0, interlocked }) => ({ load: interlocked ? Math.max(load, supplement) : load + supplement }));
  return {
    floorAreaFt2: dwelling.floor_area,
    smallApplianceCircuits: dwelling.small_appliance_circuits,
    laundryCircuits: dwelling.laundry_circuits,
    appliances: [...appliancesOf(dwelling), ...vaOf(added, "fixed")],
    cooking: [...nameplates(dwelling.cooking), ...nameplatesOf(added, "cooking")],
    dryers: [...nameplates(dwelling.dryers), ...nameplatesOf(added, "dryer")],
    heatingVA: total([...dwelling.climate.filter(isKind("space-heating", "thermal-storage")), ...warming]) + sumVA(vaOf(added, "heating")),
    heatPumpVA: Math.max(0, ...heatPumps.map(({ load, supplement = 0, interlocked }) => (interlocked && supplement > load ? 0 : load))),
    coolingVA: total([...dwelling.climate.filter(isKind("cooling")), ...heatPumps]) + sumVA(vaOf(added, "cooling")),
    evSupply: [...dwelling.ev.flatMap(({ load, count }) => times(count, load ?? null)), ...vaOf(added, "ev").map(({ va }) => va), ...evBehindFeeders(added)],
    others: vaOf(withoutEv(added), "whole", "motor"),
  };
}

/** One selection of each kind: what can run together is summed. Space heating beside a heat pump is taken as more of its electric heat. */
function climateOf(dwelling: Dwelling, added: readonly NewLoad[]): readonly ClimateLoad[] {
  const cooling = total(dwelling.climate.filter(isKind("cooling"))) + sumVA(vaOf(added, "cooling"));
  const space = dwelling.climate.filter(isKind("space-heating"));
  const spaceVA = total(space) + sumVA(vaOf(added, "heating"));
  const controls = space.reduce((sum, { controls: units }) => sum + units, 0) + vaOf(added, "heating").length;
  const storage = total(dwelling.climate.filter(isKind("thermal-storage")));
  const pumps = dwelling.climate.filter(isKind("heat-pump"));
  const pumpVA = total(pumps);
  const supplementVA = pumps.reduce((sum, { supplement = 0 }) => sum + supplement, 0) + spaceVA;
  const interlocked = spaceVA === 0 && pumps.every((pump) => pump.interlocked);
  return [
    ...(cooling > 0 ? [{ kind: "cooling" as const, va: cooling + pumpVA }] : []),
    ...(pumpVA > 0 ? [{ kind: "heat-pump" as const, va: pumpVA, supplementVA, interlocked }] : []),
    ...(pumpVA === 0 && spaceVA > 0 ? [{ kind: "space-heating" as const, va: spaceVA, separatelyControlled: controls }] : []),
    ...(storage > 0 ? [{ kind: "thermal-storage" as const, va: storage }] : []),
  ];
}

/**
 * Load of the whole house in VA with the new work inside it, by the standard or the optional method: new equipment stands among its
 * like, all else whole (standard) or among the appliances on circuits of their own (optional).
 */
export function houseLoad(given: {
  readonly id: string;
  readonly dwelling: Dwelling;
  readonly added: readonly NewLoad[];
  readonly method: "standard" | "optional";
  readonly edition: Edition;
}): LoadSum {
  const { id, dwelling, added, edition } = given;
  if (given.method === "standard") return standardDwellingLoad({ id, dwelling: standardOf(dwelling, added), edition });
  const LEAST_UNKNOWN_EV = 7200;
  const list = (name: string, values: readonly number[]) => values.map((va) => ({ name, va }));
  return optionalDwellingLoad({
    id,
    dwelling: {
      floorAreaFt2: dwelling.floor_area,
      smallApplianceCircuits: dwelling.small_appliance_circuits,
      laundryCircuits: dwelling.laundry_circuits,
      appliances: [
        ...appliancesOf(dwelling),
        ...list("cooking", [...nameplates(dwelling.cooking), ...nameplatesOf(added, "cooking")]),
        ...list("dryer", [...nameplates(dwelling.dryers), ...nameplatesOf(added, "dryer")]),
        ...vaOf(withoutEv(added), "whole", "motor", "fixed"),
      ],
      evSupply: [
        ...dwelling.ev.flatMap(({ load, count }) => times(count, load ?? LEAST_UNKNOWN_EV)),
        ...vaOf(added, "ev").map(({ va }) => va),
        ...evBehindFeeders(added),
      ],
      climate: climateOf(dwelling, added),
    },
    edition,
  });
}

/**
 * Neutral load of the service in amperes with the new work, 220.61: lighting after its demand factors, appliances to the neutral at
 * nameplate with a quarter of the largest motor among them, cooking and dryers at 70 %, new loads by what they put on one leg.
 */
export function serviceNeutral(given: {
  readonly id: string;
  readonly dwelling: Dwelling;
  readonly added: readonly NewLoad[];
  readonly volts: number;
  readonly edition: Edition;
}): LoadSum {
  const { id, dwelling, added, volts, edition } = given;
  const { parts } = standardDwellingLoad({ id: `${id}.house`, dwelling: standardOf(dwelling, added), edition });
  const toNeutral = dwelling.appliances.filter((appliance) => appliance.neutral);
  const appliances = toNeutral.reduce((sum, { load, count }) => sum.plus(decimal(load).times(count)), decimal(0));
  const motor = decimal(Math.max(0, ...toNeutral.filter((a) => a.motor).map((a) => a.load))).times("0.25");
  const fresh = added.filter(({ kind }) => kind !== "cooking" && kind !== "dryer").reduce((sum, load) => sum.plus(load.neutralVA), decimal(0));
  const lineToNeutralVA = decimal(parts.lighting.value).plus(appliances).plus(motor).plus(fresh);
  const { total: sum, steps } = neutralLoad({
    id,
    load: { lineToNeutralVA, cookingVA: parts.cooking.value, dryersVA: parts.dryers.value, volts },
    edition,
  });
  const says = [
    `${print(parts.lighting.value)} VA (lighting)`,
    `${print(appliances)} VA (appliances)`,
    `${print(motor)} VA (motor)`,
    `${print(fresh)} VA (new work)`,
  ].join(" + ");
  return { total: sum, steps: steps.map((step) => (step.id === `${id}.line-to-neutral` ? { ...step, expression: says } : step)) };
}
