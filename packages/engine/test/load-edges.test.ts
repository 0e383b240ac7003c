import fc from "fast-check";
import { evaluate } from "mathjs";
import { describe, expect, it } from "vitest";
import { EDITIONS, type Edition } from "../src/basis/edition.js";
import { cookingBranchLoad } from "../src/service/cooking-branch.js";
import { dryerDemand } from "../src/service/dryer-demand.js";
import { outbuildingFeederLoad } from "../src/service/feeder-load.js";
import { fixedApplianceDemand } from "../src/service/fixed-appliances.js";
import { managedLoad } from "../src/service/managed-load.js";
import { neutralLoad } from "../src/service/neutral-load.js";
import { noncoincidentLoad } from "../src/service/noncoincident.js";
import { optionalDwellingLoad } from "../src/service/optional-dwelling.js";
import { rangeDemand } from "../src/service/range-demand.js";
import { rvParkDemand } from "../src/service/rv-park-demand.js";
import { type StandardDwelling, standardDwellingLoad } from "../src/service/standard-dwelling.js";
import { readCell } from "../src/tables/code-table.js";
import { DRYER_DEMAND } from "../src/tables/dryer-demand.js";
import { LIGHTING_DEMAND } from "../src/tables/lighting-demand.js";
import { RANGE_DEMAND } from "../src/tables/range-demand.js";
import { RV_SITE_DEMAND, RV_SITE_LOAD } from "../src/tables/rv-site-demand.js";
import type { Worked } from "../src/worked.js";

const edition = "2023" as const;
const id = "x";
const at = (steps: readonly Worked[], key: string) => {
  const line = steps.find((step) => step.id === `${id}.${key}`);
  if (!line) throw new Error(`no line ${key} among ${steps.map((step) => step.id).join(", ")}`);
  return Number(line.value);
};
const bare: StandardDwelling = {
  floorAreaFt2: 0,
  smallApplianceCircuits: 2,
  laundryCircuits: 1,
  appliances: [],
  cooking: [],
  dryers: [],
  heatingVA: 0,
  coolingVA: 0,
  evSupply: [],
  others: [],
};

describe("edges", () => {
  it("columns at 1.75, 3.5, 8.75, 12 and 27 kW (Table 220.55 title and notes: Electrical Knowhow, Mike Holt Forums)", () => {
    const demand = (va: number) => Number(rangeDemand({ id, appliances: [va], edition }).total.value);
    expect(demand(1750)).toBe(1750);
    expect(rangeDemand({ id, appliances: [3499], edition }).steps[0]!.cells[0]!.column).toBe("A");
    expect(rangeDemand({ id, appliances: [3500], edition }).steps[0]!.cells[0]!.column).toBe("B");
    expect(demand(8750)).toBe(7000);
    expect(demand(8751)).toBe(8000);
    expect(demand(12000)).toBe(8000);
    expect(demand(12499)).toBe(8000);
    expect(demand(12500)).toBe(8400);
    expect(demand(27000)).toBe(14000);
    expect(demand(27001)).toBe(27001);
  });
  it("column C by its closed form 5 + 3n, 15 + n, 25 + 0.75n", () => {
    for (let n = 1; n <= 70; n++) {
      const kw = n <= 5 ? 5 + 3 * n : n <= 40 ? 15 + n : 25 + 0.75 * n;
      expect(Number(rangeDemand({ id, appliances: Array<number>(n).fill(12000), edition }).total.value)).toBe(kw * 1000);
    }
  });
  it("dryers: 5, 9, 10, 11 and the 12 to 23 formula (one source: urban-wind.org, Mike Holt Forums); 6 to 8 and from 24 memory", () => {
    const percent = (n: number) => at(dryerDemand({ id, dryers: Array<number>(n).fill(5000), edition }).steps, "percent");
    expect([1, 4, 5, 9, 10, 11, 12, 23].map(percent)).toEqual([100, 100, 85, 55, 50, 47, 46, 35]);
    expect([6, 7, 8, 24, 42, 43, 80].map(percent)).toEqual([75, 65, 60, 34.5, 25.5, 25, 25]);
  });
  it("RV sites 1 to 18: memory, and marked so", () => {
    const percents = [1, 2, 3, 4, 5, 6, 7, 9, 10, 12, 13, 15, 16, 18].map(
      (n) => Number(rvParkDemand({ id, sites: [{ site: "20", count: n }], otherVA: 0, edition }).total.value) / (24 * n),
    );
    expect(percents.map((p) => Math.round(p))).toEqual([100, 90, 80, 75, 65, 60, 55, 55, 50, 50, 48, 48, 47, 47]);
    for (const row of ["1", "2", "3", "16"]) expect(readCell(RV_SITE_DEMAND, row, "percent", edition)!.citation.standing).toBe("memory");
  });
  it("the fourth appliance brings 75 %; from 2020 one under 500 W does not count (memory)", () => {
    const appliances = [1200, 1200, 1200, 499].map((va, i) => ({ name: `${i}`, va }));
    expect(fixedApplianceDemand({ id, appliances, edition: "2017" }).total.value).toBe(String(0.75 * 4099));
    expect(fixedApplianceDemand({ id, appliances, edition: "2020" }).total.value).toBe("4099");
  });
  it("heating against cooling: the larger; from 2020 cooling is compared at 125 % (memory), less another motor's share", () => {
    const loads = (heating: number, cooling: number) => [
      { name: "heating", va: heating, motor: false },
      { name: "cooling", va: cooling, motor: true },
    ];
    expect(noncoincidentLoad({ id, loads: loads(5000, 4900), edition: "2017" }).total.value).toBe("5000");
    expect(noncoincidentLoad({ id, loads: loads(5000, 4000), edition }).total.value).toBe("5000");
    expect(noncoincidentLoad({ id, loads: loads(5000, 4001), edition }).counted!.name).toBe("cooling");
    expect(noncoincidentLoad({ id, loads: loads(5000, 4900), otherMotorVA: 5000, edition }).total.value).toBe("5000");
    expect(noncoincidentLoad({ id, loads: loads(5000, 4900), otherMotorVA: 900, edition }).total.value).toBe("5900");
    // A heat pump of 3,000 VA in 5,000 VA of heating: 5,000 + 750 against 4,500 × 1.25 = 5,625, by hand.
    const pump = [
      { name: "heating", va: 5000, motor: false, motorVA: 3000 },
      { name: "cooling", va: 4500, motor: true },
    ];
    const { total, counted, motorIncreased } = noncoincidentLoad({ id, loads: pump, edition });
    expect([total.value, counted!.name, motorIncreased]).toEqual(["5750", "heating", true]);
  });
  it("space heating: 65 % for three separately controlled units, 40 % for four (220.82(C): D2(a), memory for three)", () => {
    const climate = (n: number) =>
      at(
        optionalDwellingLoad({
          id,
          dwelling: { ...bare, appliances: [], evSupply: [], climate: [{ kind: "space-heating", va: 9000, separatelyControlled: n }] },
          edition,
        }).steps,
        "climate",
      );
    expect([3, 4].map(climate)).toEqual([5850, 3600]);
  });
  it("a managed load counts its setpoint from 2023 (220.70: https://www.mikeholt.com/newsletters.php?action=display&letterID=3004), before that only for EV supply (625.42, memory)", () => {
    const managed = (setpointAmperes: number, manages: "any" | "ev-only", year: Edition) =>
      managedLoad({ id, setpointAmperes, volts: 240, managedVA: [11520, 7680], manages, edition: year });
    expect(managed(40, "any", "2023")!.total.value).toBe("9600");
    expect(managed(40, "any", "2023")!.sizing.value).toBe("12000");
    expect(managed(100, "any", "2023")!.total.value).toBe("19200");
    expect(managed(40, "any", "2020")).toBeNull();
    expect(managed(40, "ev-only", "2017")!.total.value).toBe("9600");
  });
  it("a cooktop with three ovens, or a range with an oven, is not one range", () => {
    expect(cookingBranchLoad({ id, cooktop: 6000, ovens: [4000, 4000, 4000], edition })).toBeNull();
    expect(cookingBranchLoad({ id, range: 12000, ovens: [4000], edition })).toBeNull();
    expect(cookingBranchLoad({ id, range: 12000, edition })!.total.value).toBe("8000");
    // Note 1 ends at 27 kW: 8,000 × (1 + 0.05 × 15); above it the nameplate stands, the larger.
    expect([27000, 27001].map((range) => cookingBranchLoad({ id, range, edition })!.total.value)).toEqual(["14000", "27001"]);
  });
});

describe("every demand table answers in every edition, 2026 from memory", () => {
  for (const table of [RANGE_DEMAND, DRYER_DEMAND, LIGHTING_DEMAND, RV_SITE_DEMAND, RV_SITE_LOAD])
    it(table.id, () => {
      expect(table.sources.length).toBeGreaterThan(0);
      for (const [row, cells] of Object.entries(table.rows)) {
        expect(cells).toHaveLength(table.columns.length);
        for (const column of table.columns)
          for (const year of EDITIONS) {
            const cell = readCell<string>(table, row, column, year);
            if (cell === null) continue;
            expect(cell.citation.section).toBeTruthy();
            expect(cell.value).toMatch(/^\d+(\.\d+)?$/);
          }
      }
    });
});

const va = fc.integer({ min: 0, max: 30000 });
const appliance = fc.record({ name: fc.constant("a"), va, motor: fc.boolean() });
const dwelling: fc.Arbitrary<StandardDwelling> = fc.record({
  floorAreaFt2: fc.integer({ min: 100, max: 60000 }),
  smallApplianceCircuits: fc.integer({ min: 2, max: 6 }),
  laundryCircuits: fc.integer({ min: 0, max: 3 }),
  appliances: fc.array(appliance, { maxLength: 7 }),
  cooking: fc.array(fc.integer({ min: 1, max: 30000 }), { maxLength: 5 }),
  dryers: fc.array(va, { maxLength: 4 }),
  heatingVA: va,
  heatPumpVA: fc.constant(0),
  coolingVA: va,
  evSupply: fc.array(fc.option(va), { maxLength: 3 }),
  others: fc.array(appliance, { maxLength: 3 }),
});
const years = fc.constantFrom(...EDITIONS);
const more = fc.integer({ min: 1, max: 20000 });

describe("more load never gives less", () => {
  const standard = (d: StandardDwelling, year: Edition) => Number(standardDwellingLoad({ id, dwelling: d, edition: year }).total.value);
  it("standard method: area, heating, cooling, another load, dryer, EV supply, an appliance made larger", () =>
    fc.assert(
      fc.property(dwelling, more, years, (d, extra, year) => {
        const before = standard(d, year) - 1e-6;
        expect(standard({ ...d, floorAreaFt2: d.floorAreaFt2 + extra }, year)).toBeGreaterThanOrEqual(before);
        // In 2017 the larger alone counts (220.60): heating that overtakes a cooling motor takes that motor's quarter with it.
        if (year !== "2017") expect(standard({ ...d, heatingVA: d.heatingVA + extra }, year)).toBeGreaterThanOrEqual(before);
        expect(standard({ ...d, coolingVA: d.coolingVA + extra }, year)).toBeGreaterThanOrEqual(before);
        expect(standard({ ...d, others: [...d.others, { name: "b", va: extra, motor: true }] }, year)).toBeGreaterThanOrEqual(before);
        expect(standard({ ...d, evSupply: [...d.evSupply, extra] }, year)).toBeGreaterThanOrEqual(before);
        if (d.dryers.length < 4) expect(standard({ ...d, dryers: [...d.dryers, extra] }, year)).toBeGreaterThanOrEqual(before);
        // 75 % begins at the fourth appliance, so an appliance is made larger only where it counted as one already.
        const larger = d.appliances.map((a, i) => (i === 0 && a.va >= 500 ? { ...a, va: a.va + extra } : a));
        expect(standard({ ...d, appliances: larger }, year)).toBeGreaterThanOrEqual(before);
      }),
    ));
  it("standard method: a heat pump beside cooling, and either made larger", () =>
    fc.assert(
      fc.property(dwelling, more, more, more, years, (d, pump, cooling, extra, year) => {
        const of = (pumpVA: number, coolingVA: number) => standard({ ...d, heatingVA: pumpVA, heatPumpVA: pumpVA, coolingVA }, year);
        const before = of(pump, cooling) - 1e-6;
        expect(before).toBeGreaterThanOrEqual(Math.max(of(0, cooling), of(pump, 0)) - 2e-6);
        expect(of(pump + extra, cooling)).toBeGreaterThanOrEqual(before);
        expect(of(pump, cooling + extra)).toBeGreaterThanOrEqual(before);
      }),
    ));
  it("optional method: every part", () =>
    fc.assert(
      fc.property(dwelling, more, years, fc.integer({ min: 1, max: 6 }), (d, extra, year, units) => {
        const total = (heating: number, cooling: number, all: number, area: number, ev: number) =>
          Number(
            optionalDwellingLoad({
              id,
              dwelling: {
                ...d,
                floorAreaFt2: area,
                appliances: [{ name: "all", va: all }],
                evSupply: [ev],
                climate: [
                  { kind: "heat-pump", va: cooling, supplementVA: heating, interlocked: false },
                  { kind: "space-heating", va: heating, separatelyControlled: units },
                  { kind: "cooling", va: cooling },
                ],
              },
              edition: year,
            }).total.value,
          );
        const base = [d.heatingVA, d.coolingVA, 9000, d.floorAreaFt2, 7200] as const;
        const before = total(...base) - 1e-6;
        for (const i of base.keys()) expect(total(...(base.map((v, j) => (i === j ? v + extra : v)) as unknown as typeof base))).toBeGreaterThanOrEqual(before);
      }),
    ));
  it("cooking: a range over 8¾ kW made larger, to 27 kW", () =>
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 8751, max: 26000 }), { minLength: 1, maxLength: 12 }), fc.integer({ min: 1, max: 1000 }), (list, extra) => {
        const demand = (all: readonly number[]) => Number(rangeDemand({ id, appliances: all, edition }).total.value);
        expect(demand(list.map((v, i) => (i === 0 ? v + extra : v)))).toBeGreaterThanOrEqual(demand(list) - 1e-6);
      }),
    ));
  it("neutral, feeder, setpoint", () =>
    fc.assert(
      fc.property(va, va, va, more, years, (a, b, c, extra, year) => {
        const neutral = (x: number, y: number, z: number) =>
          Number(neutralLoad({ id, load: { lineToNeutralVA: x, cookingVA: y, dryersVA: z, volts: 240 }, edition: year }).total.value);
        const before = neutral(a * 4, b, c) - 1e-9;
        expect(Math.min(neutral(a * 4 + extra, b, c), neutral(a * 4, b + extra, c), neutral(a * 4, b, c + extra))).toBeGreaterThanOrEqual(before);
        const feeder = (x: number, y: number, z: number) =>
          outbuildingFeederLoad({
            id,
            loads: [
              { name: "n", va: x, duty: "noncontinuous" },
              { name: "c", va: y, duty: "continuous" },
              { name: "m", va: z, duty: "motor" },
            ],
            volts: 240,
            edition: year,
          });
        expect(Number(feeder(a, b, c).sizing.value)).toBeGreaterThanOrEqual(Number(feeder(a, b, c).amperes.value));
        for (const grown of [feeder(a + extra, b, c), feeder(a, b + extra, c), feeder(a, b, c + extra)])
          expect(Number(grown.sizing.value)).toBeGreaterThan(Number(feeder(a, b, c).sizing.value));
      }),
    ));
});

/** An expression as printed, made readable for an independent evaluator. */
function plain(expression: string): string {
  return expression
    .replace(/\([a-z][^)\d]*\)/gi, "")
    .replaceAll(",", "")
    .replaceAll(";", ",")
    .replaceAll("×", "*")
    .replaceAll("²", "2")
    .replace(/\b(VA\/ft2|VA|ft2|A|V)\b/g, "");
}

describe("every printed line, redone by mathjs, gives its value and cites", () => {
  it("for any dwelling", () =>
    fc.assert(
      fc.property(dwelling, years, (d, year) => {
        const { steps, parts } = standardDwellingLoad({ id, dwelling: d, edition: year });
        const optional = optionalDwellingLoad({
          id,
          dwelling: { ...d, evSupply: d.evSupply.map((v) => v ?? 7200), climate: [{ kind: "cooling", va: d.coolingVA }] },
          edition: year,
        });
        const neutral = neutralLoad({
          id,
          load: { lineToNeutralVA: parts.lighting.value, cookingVA: parts.cooking.value, dryersVA: parts.dryers.value, volts: 240 },
          edition: year,
        });
        const feeder = outbuildingFeederLoad({
          id,
          loads: d.others.map((o) => ({ name: "load", va: o.va, duty: o.motor ? "motor" : "continuous" })),
          volts: 240,
          edition: year,
        });
        for (const step of [...steps, ...optional.steps, ...neutral.steps, ...feeder.steps]) {
          if (!/^\d+(\.\d+)?$/.test(step.value)) throw new Error(`${step.id} = ${step.value}`);
          const value = Number(evaluate(plain(step.expression)));
          const near = step.rounding ? 0.51 : Math.max(0.02, Number(step.value) * 1e-4);
          if (Math.abs(value - Number(step.value)) > near) throw new Error(`${step.id}: ${step.expression} = ${step.value}, redone ${value}`);
        }
      }),
    ));
});

describe("cooking appliances of unlike ratings, Table 220.55 by hand", () => {
  // Column A one 80 %, two 75; column B one 80 %, two 65; column C one 8 kW, two 11 kW, 5 % more for each kW over 12.
  it.each([
    ["both up to 12 kW: column C for two is the less, 11,000 against 3,200 + 8,000", [4000, 12000], "11000"],
    ["small ones: columns A and B are the less, 2,250 × 2 × 0.75", [2250, 2250], "3375"],
    ["one over 12 kW beside a small one: Note 3 alone, 3,200 + 8,000 × 1.10", [4000, 14000], "12000"],
    ["both over 12 kW: column C with Note 1, 11,000 × 1.05", [13000, 13000], "11550"],
    ["outside the table: at nameplate, each", [30000, 1000], "31000"],
    ["a large one and one outside", [12000, 1500], "9500"],
  ])("%s", (_says, appliances, total) => expect(rangeDemand({ id, appliances, edition }).total.value).toBe(total));
  it("what lies outside is numbered from one", () =>
    expect(rangeDemand({ id, appliances: [30000, 1000], edition }).total.inputs).toEqual([`${id}.outside-1`, `${id}.outside-2`]));
});
