import { article220, type Edition } from "../basis/edition.js";
import { decimal, print } from "../quantity.js";
import type { Worked } from "../worked.js";
import { dryerDemand } from "./dryer-demand.js";
import { evLoad } from "./ev-load.js";
import { type FixedAppliance, fixedApplianceDemand } from "./fixed-appliances.js";
import { largestMotorQuarter } from "./largest-motor.js";
import { type GeneralLighting, generalLightingLoad, lightingDemand } from "./lighting-demand.js";
import { type LoadSum, loadLine, loadRule } from "./load-line.js";
import { motorIn, noncoincidentLoad } from "./noncoincident.js";
import { rangeDemand } from "./range-demand.js";

const RULE = loadRule(article220("40"), "published");
const OTHER = loadRule(article220("14(A)"), "memory");

export interface StandardDwelling extends GeneralLighting {
  readonly appliances: readonly FixedAppliance[];
  /** Nameplates of household cooking appliances in VA. */
  readonly cooking: readonly number[];
  /** Nameplates of electric clothes dryers in VA. */
  readonly dryers: readonly number[];
  readonly heatingVA: number;
  /** The largest heat pump that is part of `heatingVA`: a motor. */
  readonly heatPumpVA?: number;
  readonly coolingVA: number;
  /** Nameplates of EV supply equipment in VA; null where not known. */
  readonly evSupply: readonly (number | null)[];
  /** Loads with no demand factor, counted whole: an RV outlet, a hot tub, a welder. */
  readonly others: readonly FixedAppliance[];
}

export interface StandardDwellingLoad extends LoadSum {
  /** The lines that make the total, to build a neutral from. */
  readonly parts: Readonly<Record<"lighting" | "appliances" | "cooking" | "dryers" | "climate" | "ev" | "others" | "motor", Worked>>;
}

/**
 * Load of a dwelling in VA by the standard method, Article 220 Part III (Article 120 in 2026): lighting with demand factors, appliances
 * fastened in place, cooking, dryers, the larger of heating and cooling, EV supply, other loads whole, a quarter of the largest motor.
 */
export function standardDwellingLoad(given: { readonly id: string; readonly dwelling: StandardDwelling; readonly edition: Edition }): StandardDwellingLoad {
  const { id, dwelling, edition } = given;
  const general = generalLightingLoad({ id, dwelling, edition });
  const lighting = lightingDemand({ id, connectedVA: general.total.value, edition });
  const appliances = fixedApplianceDemand({ id, appliances: dwelling.appliances, edition });
  const cooking = rangeDemand({ id: `${id}.cooking`, appliances: dwelling.cooking, edition });
  const dryers = dryerDemand({ id: `${id}.dryers`, dryers: dwelling.dryers, edition });
  const motors = [...dwelling.appliances, ...dwelling.others].filter((load) => load.motor).map((load) => load.va);
  const climate = noncoincidentLoad({
    id: `${id}.climate`,
    loads: [
      { name: "heating", va: dwelling.heatingVA, motor: false, motorVA: dwelling.heatPumpVA ?? 0 },
      { name: "cooling", va: dwelling.coolingVA, motor: true },
    ].filter((load) => load.va > 0),
    otherMotorVA: Math.max(0, ...motors),
    edition,
  });
  const stations = dwelling.evSupply.map((nameplateVA, i) => evLoad({ id: `${id}.ev-${i + 1}`, nameplateVA, edition }));
  const ev = sum(`${id}.ev`, "EV supply equipment", stations, edition);
  const others = loadLine({
    id: `${id}.others`,
    label: "Other loads, counted whole",
    value: dwelling.others.reduce((all, load) => all.plus(load.va), decimal(0)),
    expression: dwelling.others.map((load) => `${print(load.va)} VA`).join(" + ") || "0 VA",
    rules: [OTHER],
    edition,
  });
  const compressor = climate.counted === null || climate.motorIncreased ? 0 : motorIn(climate.counted);
  const motor = largestMotorQuarter({ id: `${id}.motor`, motorsVA: [...motors, compressor], edition });
  const parts = {
    lighting: lighting.total,
    appliances: appliances.total,
    cooking: cooking.total,
    dryers: dryers.total,
    climate: climate.total,
    ev,
    others,
    motor,
  };
  const counted = Object.values(parts).filter((line) => line.value !== "0");
  const total = loadLine({
    id: `${id}.total`,
    label: "Dwelling load, standard method",
    value: counted.reduce((all, line) => all.plus(line.value), decimal(0)),
    expression: counted.map((line) => `${print(line.value)} VA`).join(" + ") || "0 VA",
    inputs: counted,
    rules: [RULE],
    edition,
  });
  const steps = [general, lighting, appliances, cooking, dryers, climate].flatMap((part) => part.steps);
  return { total, parts, steps: [...steps, ...stations, ev, others, motor, total] };
}

function sum(id: string, label: string, lines: readonly Worked[], edition: Edition): Worked {
  return loadLine({
    id,
    label,
    value: lines.reduce((all, line) => all.plus(line.value), decimal(0)),
    expression: lines.map((line) => `${print(line.value)} VA`).join(" + ") || "0 VA",
    inputs: lines,
    edition,
  });
}
