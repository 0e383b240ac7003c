import { article220, type Edition, type PerEdition } from "../basis/edition.js";
import { Decimal, decimal, print } from "../quantity.js";
import { type GeneralLighting, generalLightingLoad } from "./lighting-demand.js";
import { type LoadSum, loadLine, loadRule } from "./load-line.js";
import { type ClimateLoad, optionalClimateLoad } from "./optional-climate.js";

interface Tiers {
  readonly firstVA: number;
  /** Where EV supply equipment stands: in the tiers as an appliance, or whole beside them. */
  readonly evSupply: "in-tiers" | "whole";
}
/** The first tier counts whole, the rest at 40 %. 2026: 8 kVA, and EV supply whole, each by one report. */
const TIERS: PerEdition<Tiers> = {
  "2017": { firstVA: 10000, evSupply: "in-tiers" },
  "2020": { firstVA: 10000, evSupply: "in-tiers" },
  "2023": { firstVA: 10000, evSupply: "in-tiers" },
  "2026": { firstVA: 8000, evSupply: "whole" },
};
const GENERAL = loadRule(article220("82(B)"), "published", "one-source");
const WHOLE = loadRule(article220("82"), "published", "one-source");
const EV_WHOLE = loadRule({ "2017": null, "2020": null, "2023": null, "2026": "120.82(D)" }, "memory");
/** The supply the method asks for: one dwelling unit on one 120/240 or 208Y/120 V 3-wire service or feeder of 100 A or more. 220.82(A). */
export const OPTIONAL_DWELLING_LEAST_AMPERES = 100;

export interface NamedLoad {
  readonly name: string;
  readonly va: number;
}

export interface OptionalDwelling extends GeneralLighting {
  /** Nameplates of everything fastened in place or on its own circuit: ranges, ovens, dryers, water heaters, motors, outlets for a fixed use. */
  readonly appliances: readonly NamedLoad[];
  /** Nameplates of EV supply equipment in VA. */
  readonly evSupply: readonly number[];
  readonly climate: readonly ClimateLoad[];
}

/**
 * Load of a dwelling in VA by the optional method: first 10 kVA (8 kVA in 2026) of the general loads whole, the rest at 40 %, and the
 * largest heating or cooling selection. 220.82 (120.82). Not for a supply under 100 A or for a feeder that carries part of the load.
 */
export function optionalDwellingLoad(given: { readonly id: string; readonly dwelling: OptionalDwelling; readonly edition: Edition }): LoadSum {
  const { id, dwelling, edition } = given;
  const { firstVA, evSupply } = TIERS[edition];
  const lighting = generalLightingLoad({ id, dwelling, edition });
  const inTiers = [...dwelling.appliances.map((load) => load.va), ...(evSupply === "in-tiers" ? dwelling.evSupply : [])];
  const outside = evSupply === "whole" ? dwelling.evSupply : [];
  const list = (values: readonly number[]) => values.map((va) => `${print(va)} VA`).join(" + ") || "0 VA";
  const add = (values: readonly number[]) => values.reduce((sum, va) => sum.plus(va), decimal(0));
  const appliances = loadLine({
    id: `${id}.appliances`,
    label: "Appliances at nameplate",
    value: add(inTiers),
    expression: list(inTiers),
    rules: [GENERAL],
    edition,
  });
  const sum = loadLine({
    id: `${id}.sum`,
    label: "General loads",
    value: decimal(lighting.total.value).plus(appliances.value),
    expression: `${print(lighting.total.value)} VA + ${print(appliances.value)} VA`,
    inputs: [lighting.total, appliances],
    edition,
  });
  const first = Decimal.min(firstVA, sum.value);
  const remainder = decimal(sum.value).minus(first);
  const tiers = loadLine({
    id: `${id}.tiers`,
    label: `First ${print(firstVA)} VA whole, remainder at 40 %`,
    value: first.plus(remainder.times("0.4")),
    expression: `${print(first)} VA + ${print(remainder)} VA × 0.40`,
    inputs: [sum],
    rules: [GENERAL],
    edition,
  });
  const climate = optionalClimateLoad({ id, loads: dwelling.climate, edition });
  const ev =
    outside.length > 0
      ? [loadLine({ id: `${id}.ev`, label: "EV supply equipment, whole", value: add(outside), expression: list(outside), rules: [EV_WHOLE], edition })]
      : [];
  const parts = [tiers, climate.total, ...ev];
  const total = loadLine({
    id: `${id}.total`,
    label: "Dwelling load, optional method",
    value: parts.reduce((all, line) => all.plus(line.value), decimal(0)),
    expression: parts.map((line) => `${print(line.value)} VA`).join(" + "),
    inputs: parts,
    rules: [WHOLE],
    edition,
  });
  return { total, steps: [...lighting.steps, appliances, sum, tiers, ...climate.steps, ...ev, total] };
}
