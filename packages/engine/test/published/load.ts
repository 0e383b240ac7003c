import { expect } from "vitest";
import { cookingBranchLoad } from "../../src/service/cooking-branch.js";
import { existingDwellingLoad } from "../../src/service/existing-dwelling.js";
import { fixedApplianceDemand } from "../../src/service/fixed-appliances.js";
import { generalLightingLoad, lightingDemand } from "../../src/service/lighting-demand.js";
import { type NeutralGiven, neutralLoad } from "../../src/service/neutral-load.js";
import { type OptionalDwelling, optionalDwellingLoad } from "../../src/service/optional-dwelling.js";
import { rangeDemand } from "../../src/service/range-demand.js";
import { leastRvFeederAmperes, type RvSites, rvParkDemand } from "../../src/service/rv-park-demand.js";
import { leastService } from "../../src/service/service-load.js";
import { type StandardDwelling, standardDwellingLoad } from "../../src/service/standard-dwelling.js";
import { readCell } from "../../src/tables/code-table.js";
import { MOTOR_CURRENT } from "../../src/tables/motor-current.js";
import type { Worked } from "../../src/worked.js";
import { agrees, edition, id, type Proofs, type Row } from "./row.js";

const at = (steps: readonly Worked[], key: string): number => {
  const line = steps.find((step) => step.id === `${id}.${key}`);
  if (!line) throw new Error(`no line ${key} among ${steps.map((step) => step.id).join(", ")}`);
  return Number(line.value);
};
const kilo = (kW: number) => kW * 1000;
const ofRatings = (ratings: readonly number[], of = "appliance") => ratings.map((va, i) => ({ name: `${of} ${i + 1}`, va }));
/** Least service for a load in VA, by its amperes to the nearest whole one. */
const service = (va: Worked, volts: number) => Number(leastService({ ...va, unit: "A", value: String(Math.round(Number(va.value) / volts)) }, edition)!.value);

function standard({ inputs: i }: Row, more: Partial<StandardDwelling> = {}) {
  const dwelling: StandardDwelling = {
    floorAreaFt2: i.area_ft2,
    smallApplianceCircuits: i.sabc,
    laundryCircuits: i.laundry,
    appliances: [],
    cooking: [kilo(i.range_kW)],
    dryers: i.dryer_W === undefined ? [] : [i.dryer_W],
    heatingVA: 0,
    coolingVA: 0,
    evSupply: [],
    others: [],
    ...more,
  };
  const found = standardDwellingLoad({ id, dwelling, edition });
  const { lighting, cooking, dryers } = found.parts;
  const load: NeutralGiven = { lineToNeutralVA: lighting.value, cookingVA: cooking.value, dryersVA: dryers.value, volts: i.voltage_V };
  return { ...found, neutral: neutralLoad({ id, load, edition }), amperes: Number(found.total.value) / i.voltage_V };
}

function optional(row: Row, climate: OptionalDwelling["climate"]) {
  const { inputs: i } = row;
  const dwelling: OptionalDwelling = {
    floorAreaFt2: i.area_ft2,
    smallApplianceCircuits: i.sabc,
    laundryCircuits: i.laundry,
    appliances: ofRatings(i.nameplates_VA),
    evSupply: [],
    climate,
  };
  const found = optionalDwellingLoad({ id, dwelling, edition });
  agrees(row, "general_VA", at(found.steps, "sum"));
  agrees(row, "general_demand_VA", at(found.steps, "tiers"));
  agrees(row, "total_VA", found.total.value);
  agrees(row, "amps", Number(found.total.value) / i.voltage_V);
  agrees(row, "service_A", service(found.total, i.voltage_V));
  return found;
}

const existing = (appliancesVA: number, more: { floorAreaFt2?: number; heatingOrCoolingVA?: number; heatingOrCoolingAdded?: boolean } = {}) =>
  existingDwellingLoad({
    id,
    dwelling: {
      floorAreaFt2: 1000,
      smallApplianceCircuits: 2,
      laundryCircuits: 1,
      appliancesVA,
      heatingOrCoolingVA: 0,
      heatingOrCoolingAdded: false,
      ...more,
    },
    edition,
  });

const ranges = (n: number, kW: number) => rangeDemand({ id, appliances: Array<number>(n).fill(kilo(kW)), edition });
const sitesOf = ({ inputs: i }: Row): RvSites[] =>
  Object.entries(i.sites as Record<string, number>).map(([site, count]) => ({ site: site.slice(1) as RvSites["site"], count, eachVA: i.va[site] }));

export const LOAD_PROOFS: Proofs = {
  "dw-001": (row) => {
    const { total, parts, neutral, amperes } = standard(row);
    agrees(row, "lighting_net_VA", parts.lighting.value);
    agrees(row, "total_VA", total.value);
    agrees(row, "amps", amperes);
    agrees(row, "amps_rounded", Math.round(amperes));
    agrees(row, "neutral_VA", at(neutral.steps, "sum"));
    agrees(row, "neutral_A", neutral.total.value);
    agrees(row, "service_min_A", service(total, row.inputs.voltage_V));
  },
  "dw-003": (row) => {
    const { total, parts, neutral, amperes } = standard(row);
    agrees(row, "lighting_net_VA", parts.lighting.value);
    agrees(row, "total_VA", total.value);
    agrees(row, "amps", amperes);
    agrees(row, "neutral_VA", at(neutral.steps, "sum"));
  },
  "dw-005": (row) => {
    const { inputs: i } = row;
    const fullLoad = Number(readCell(MOTOR_CURRENT, "1/2", "115", edition)!.value);
    expect(fullLoad).toBe(i.motor_flc_A);
    const ratings = [...i.appliances_VA, fullLoad * i.motor_V];
    const { total, steps } = fixedApplianceDemand({ id, appliances: ofRatings(ratings), edition });
    agrees(row, "demand_VA", total.value);
    agrees(row, "connected_VA", at(steps, "appliances-75") / 0.75);
  },
  "dw-008": (row) => {
    const { total, parts, steps } = standard(row);
    agrees(row, "lighting_net_W", parts.lighting.value);
    agrees(row, "total_W", total.value);
    agrees(row, "lighting_A_at_115", at(steps, "lighting") / 115);
    agrees(row, "service_min_A", service(total, row.inputs.voltage_V));
  },
  "dw-006": {
    differs: "the largest motor is one motor, the compressor, not two attic fans as one; a 240 V water heater puts nothing on the neutral",
    prove: (row) => {
      const { inputs: i, expected: e } = row;
      const [heater, ...rest] = i.fixed_VA as number[];
      const appliances = ofRatings([heater!, ...rest]).map((appliance, n) => ({ ...appliance, motor: n === 3 }));
      const { parts, neutral } = standard(row, { appliances, dryers: [i.dryer_W], coolingVA: i.ac_A * i.voltage_V });
      agrees(row, "lighting_net_VA", parts.lighting.value);
      agrees(row, "fixed_VA", parts.appliances.value);
      agrees(row, "dryer_line_VA", parts.dryers.value);
      agrees(row, "dryer_neutral_VA", at(neutral.steps, "dryers"));
      agrees(row, "range_line_VA", parts.cooking.value);
      agrees(row, "range_neutral_VA", at(neutral.steps, "cooking"));
      agrees(row, "ac_VA", parts.climate.value);
      expect(Number(parts.motor.value)).toBeCloseTo(e.ac_VA / 4, 6);
      expect(at(neutral.steps, "sum")).toBe(e.lighting_net_VA + e.dryer_neutral_VA + e.range_neutral_VA);
    },
  },
  "op-001": (row) => {
    const { inputs: i } = row;
    const { steps } = optional(row, [
      { kind: "space-heating", va: i.heat_VA, separatelyControlled: i.heat_units },
      { kind: "cooling", va: i.ac_VA },
    ]);
    agrees(row, "heat_VA", at(steps, "climate"));
  },
  "op-004": (row) => {
    const { inputs: i } = row;
    const { steps } = optional(row, [{ kind: "heat-pump", va: i.heat_pump_VA, supplementVA: i.supp_heat_VA, interlocked: false }]);
    agrees(row, "hp_plus_supp_VA", at(steps, "climate"));
  },
  "op-003": (row) => {
    const { inputs: i, expected: e } = row;
    const general = generalLightingLoad({
      id,
      dwelling: { floorAreaFt2: i.area_ft2, smallApplianceCircuits: i.sabc, laundryCircuits: i.laundry },
      edition,
    });
    const lighting = Number(lightingDemand({ id, connectedVA: general.total.value, edition }).total.value);
    const cooking = rangeDemand({ id, appliances: i.cooking_kW.map(kilo), edition }).total.value;
    agrees(row, "cooking_demand_VA", cooking);
    const neutral = (cookingVA: string | number) =>
      neutralLoad({ id, load: { lineToNeutralVA: lighting + i.dishwasher_VA, cookingVA, dryersVA: i.dryer_VA, volts: 240 }, edition });
    agrees(row, "neutral_VA", at(neutral(cooking).steps, "sum"));
    // The page carries 7,200 on where 55 % of 13,100 VA is 7,205; from its figure the next is exact.
    agrees(row, "cooking_neutral_VA", at(neutral(e.cooking_demand_VA).steps, "cooking"));
  },
  "ed-001": (row) => {
    const { inputs: i } = row;
    const { total, steps } = existing(i.range_VA + i.dryer_VA + i.disposer_VA, { floorAreaFt2: i.area_ft2 });
    agrees(row, "connected_VA", at(steps, "sum"));
    agrees(row, "demand_VA", total.value);
    agrees(row, "amps", Number(total.value) / i.voltage_V);
  },
  "ed-002": (row) => {
    const { inputs: i } = row;
    // 7,500 VA of what is there is lighting and the small-appliance and laundry circuits, as in ed-001.
    const { total, steps } = existing(i.connected_existing_VA - 7500 + i.new_VA);
    agrees(row, "connected_VA", at(steps, "sum"));
    agrees(row, "remainder_demand_VA", Number(total.value) - 8000);
    agrees(row, "demand_VA", total.value);
    agrees(row, "amps", Number(total.value) / i.voltage_V);
  },
  "ed-004": ({ inputs: i, expected: e }) => {
    const with5 = existing(0, { floorAreaFt2: 3000, heatingOrCoolingVA: 5000, heatingOrCoolingAdded: i.hvac_changed });
    const without = existing(0, { floorAreaFt2: 3000 });
    expect(with5.total.citations[0]?.section).toBe(e.method);
    const share = (Number(with5.total.value) - Number(without.total.value)) / 5000;
    expect(share === 1).toBe(e.hvac_at_100pct_separately);
    expect(share).toBeCloseTo(e.rest_pct / 100, 9);
    // Whole as far as the first tier goes: 4,500 VA of circuits and the rest of it in appliances, and 1,000 VA more at 40 %.
    const of = (va: number) => Number(existing(va - 4500, { floorAreaFt2: 0 }).total.value);
    const first = kilo(e.first_kVA);
    expect([of(first), of(first + 1000)]).toEqual([first, first + 10 * e.rest_pct]);
  },
  "rg-001": (row) => agrees(row, "demand_kW", Number(ranges(row.inputs.n, row.inputs.kW).total.value) / 1000),
  "rg-003": (row) => {
    const appliances = row.inputs.groups.flatMap(([n, kW]: [number, number]) => Array<number>(n).fill(kilo(kW)));
    const { total, steps } = rangeDemand({ id, appliances, edition });
    agrees(row, "total_kW", (at(steps, "large.average") * appliances.length) / 1000);
    agrees(row, "average_kW", at(steps, "large.average") / 1000);
    agrees(row, "column_c_kW", at(steps, "large.column-C") / 1000);
    agrees(row, "demand_kW", Number(total.value) / 1000);
  },
  "rg-005": (row) => {
    const { inputs: i } = row;
    const { total, steps } = cookingBranchLoad({ id, cooktop: kilo(i.cooktop_kW), ovens: i.ovens_kW.map(kilo), edition })!;
    agrees(row, "equiv_kW", at(steps, "sum") / 1000);
    agrees(row, "demand_kW", Number(total.value) / 1000);
    agrees(row, "amps", Number(total.value) / i.voltage_V);
  },
  "rg-006": (row) => agrees(row, "demand_kW", Number(ranges(row.inputs.n, row.inputs.kW).total.value) / 1000),
  "rg-008": (row) => {
    const cookingVA = ranges(row.inputs.n, row.inputs.kW).total.value;
    agrees(row, "column_c_kW", Number(cookingVA) / 1000);
    const { steps } = neutralLoad({ id, load: { lineToNeutralVA: 0, cookingVA, dryersVA: 0, volts: 240 }, edition });
    agrees(row, "neutral_kW", at(steps, "cooking") / 1000);
  },
  "nt-004": (row) => {
    const { inputs: i } = row;
    const dwelling = { floorAreaFt2: i.units * i.area_ft2, smallApplianceCircuits: 2 * i.units, laundryCircuits: i.units };
    const lighting = lightingDemand({ id, connectedVA: generalLightingLoad({ id, dwelling, edition }).total.value, edition }).total.value;
    agrees(row, "lighting_demand_VA", lighting);
    const cookingVA = ranges(i.ranges, i.range_kW).total.value;
    const neutral = neutralLoad({ id, load: { lineToNeutralVA: lighting, cookingVA, dryersVA: 0, volts: i.voltage_V }, edition });
    agrees(row, "range_neutral_VA", at(neutral.steps, "cooking"));
    agrees(row, "neutral_A", neutral.total.value);
  },
  "rv-001": (row) => {
    const { total, steps } = rvParkDemand({ id, sites: sitesOf(row), otherVA: 0, edition });
    agrees(row, "connected_VA", at(steps, "connected"));
    agrees(row, "demand_VA", total.value);
    expect(Number(total.value) / at(steps, "connected")).toBeCloseTo(row.expected.df, 9);
  },
  "rv-003": (row) => {
    const { total, steps } = rvParkDemand({ id, sites: [{ site: "30", count: row.inputs.sites.s30 }], otherVA: 0, edition });
    agrees(row, "demand_VA", total.value);
    agrees(row, "per_site_VA", Number(total.value) / row.inputs.sites.s30);
    expect(Number(total.value) / at(steps, "connected")).toBeCloseTo(row.expected.df, 9);
  },
  "rv-004": ({ expected: e }) => {
    const feeder = (va: number) => Number(leastRvFeederAmperes({ id, va: String(va), volts: 120, edition }).value);
    expect([feeder(0), feeder(120 * e.min_A), feeder(120 * (e.min_A + 6))]).toEqual([e.min_A, e.min_A, e.min_A + 6]);
    // A site's load is line to neutral: the neutral carries as many amperes as a hot.
    const neutral = neutralLoad({ id, load: { lineToNeutralVA: 9600, cookingVA: 0, dryersVA: 0, volts: 240 }, edition }).total.value;
    expect(Number(neutral) === 9600 / 240).toBe(e.neutral_full_size);
  },
  "rv-005": ({ expected: e }) => {
    const of = (otherVA: number) => Number(rvParkDemand({ id, sites: [{ site: "30", count: 20 }], otherVA, edition }).total.value);
    expect(of(5000) - of(0) !== 5000).toBe(e.demand_factor_on_others);
  },
};
