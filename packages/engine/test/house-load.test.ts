import { describe, expect, it } from "vitest";
import type { Edition } from "../src/basis/edition.js";
import { houseLoad, serviceNeutral } from "../src/service/house-load.js";
import type { NewLoad, NewLoadKind } from "../src/service/new-load.js";

// The loads of a house as a job tells them, brought to the two methods: how the parts are counted, by hand. The methods' own rules are
// proved by Annex D in loads.test.ts. 1,000 ft² at 3 VA/ft², two small-appliance circuits and a laundry circuit: 7,500 VA of general
// lighting, and after demand factors 3,000 + 0.35 × 4,500 = 4,575 VA.
type Dwelling = Parameters<typeof houseLoad>[0]["dwelling"];
const dwelling = (more: object = {}): Dwelling => ({
  floor_area: 1000,
  small_appliance_circuits: 2,
  laundry_circuits: 1,
  appliances: [],
  cooking: [],
  dryers: [],
  climate: [],
  ev: [],
  ...more,
});
const LIGHTING = 4575;

const fresh = (kind: NewLoadKind, va: number, more: Partial<NewLoad> = {}): NewLoad => ({
  id: "n",
  name: "new",
  va: String(va),
  kind,
  nameplates: [va],
  neutralVA: "0",
  evVA: "0",
  ...more,
});
const climate = (kind: Dwelling["climate"][number]["kind"], load: number, more: object = {}) => ({
  name: kind,
  kind,
  load,
  interlocked: false,
  controls: 1,
  ...more,
});

function of(method: "standard" | "optional", more: object, added: readonly NewLoad[] = [], edition: Edition = "2023") {
  const { total, steps } = houseLoad({ id: "x", dwelling: dwelling(more), added, method, edition });
  return { total: Number(total.value), line: (id: string) => steps.find((step) => step.id === `x.${id}`)?.value };
}

describe("standard method", () => {
  const standard = (more: object, added: readonly NewLoad[] = []) => of("standard", more, added).total - LIGHTING;

  it("nothing but lighting", () => expect(standard({})).toBe(0));
  it("a heat pump and the heat beside it heat together, and its motor has its quarter: 4,000 + 5,000 + 1,000", () =>
    expect(standard({ climate: [climate("heat-pump", 4000, { supplement: 5000 })] })).toBe(10000));
  it("interlocked, the larger of the two alone; the pump is the motor only where it runs", () => {
    const pump = (supplement: number) => standard({ climate: [climate("heat-pump", 4000, { supplement, interlocked: true })] });
    expect(pump(3999)).toBe(5000);
    expect(pump(4000)).toBe(5000);
    // 5,000 VA of heat, and cooling by the pump of 4,000 × 1.25 beside it.
    expect(pump(5000)).toBe(5000);
    expect(pump(6000)).toBe(6000);
  });
  it("the pump's heat is left out where it has none", () => expect(standard({ climate: [climate("heat-pump", 4000)] })).toBe(5000));
  it("heat of every kind is summed, cooling apart from it, the larger counts", () => {
    const heat = [climate("space-heating", 2000), climate("thermal-storage", 3000)];
    expect(standard({ climate: [...heat, climate("cooling", 1000)] })).toBe(5000);
    expect(standard({ climate: heat }, [fresh("heating", 500)])).toBe(5500);
    // 6,000 × 1.25, the largest motor; a pump cools too.
    expect(standard({ climate: [...heat, climate("cooling", 6000)] })).toBe(7500);
    expect(standard({ climate: [climate("cooling", 1000), climate("heat-pump", 5000)] })).toBe(7500);
    expect(standard({ climate: [climate("cooling", 5000)] }, [fresh("cooling", 1000)])).toBe(7500);
  });
  it("EV supply: each of a count, 7,200 VA where not told, and what stands behind a feeder apart from the feeder's rest", () => {
    const ev = [
      { name: "old", count: 2 },
      { name: "larger", load: 9000, count: 1 },
    ];
    const added = [fresh("ev", 8000), fresh("whole", 10000, { evVA: "7000" })];
    expect(standard({ ev }, added)).toBe(7200 + 7200 + 9000 + 8000 + 7200 + 3000);
    expect(of("standard", { ev }, added).line("ev-5")).toBe("7200");
    expect(of("standard", { ev }, added).line("ev-6")).toBeUndefined();
    expect(of("standard", { ev }, added).line("others")).toBe("3000");
  });
  it("new equipment stands among its like", () => {
    const three = [{ name: "three", load: 1000, count: 3, motor: false, neutral: true }];
    // Four appliances at 75 %.
    expect(standard({ appliances: three }, [fresh("fixed", 2000)])).toBe(3750);
    expect(standard({ appliances: three }, [fresh("whole", 2000)])).toBe(5000);
    // 220.55 column C, one range of 12 kW 8,000 VA and two 11,000 VA; 220.54, a dryer 5,000 VA at least.
    const range = [{ name: "range", load: 12000, count: 1 }];
    expect(standard({ cooking: range })).toBe(8000);
    expect(standard({ cooking: range }, [fresh("cooking", 8000, { nameplates: [12000] })])).toBe(11000);
    expect(standard({ cooking: [{ name: "ranges", load: 12000, count: 2 }] })).toBe(11000);
    expect(standard({ dryers: [{ name: "dryer", load: 4500, count: 1 }] }, [fresh("dryer", 5000, { nameplates: [6000] })])).toBe(11000);
  });
  it("a new motor is whole, and a quarter more where it is the largest; anything else new is no motor", () => {
    expect(standard({}, [fresh("motor", 1000)])).toBe(1250);
    expect(standard({}, [fresh("whole", 1000)])).toBe(1000);
    expect(standard({ appliances: [{ name: "pump", load: 2000, count: 1, motor: true, neutral: false }] }, [fresh("motor", 1000)])).toBe(3500);
  });
});

describe("optional method", () => {
  it("all that is fastened in place at nameplate: 7,500 + 57,200 VA, 10,000 whole and the rest at 40 %", () => {
    const found = of(
      "optional",
      {
        appliances: [{ name: "three", load: 1000, count: 3, motor: false, neutral: true }],
        cooking: [{ name: "range", load: 12000, count: 1 }],
        dryers: [{ name: "dryers", load: 5000, count: 2 }],
        ev: [{ name: "old", count: 1 }],
      },
      [
        fresh("cooking", 6000, { nameplates: [8000] }),
        fresh("whole", 4000),
        fresh("motor", 500),
        fresh("fixed", 1500),
        fresh("ev", 6000),
        fresh("whole", 5000, { evVA: "2000" }),
      ],
    );
    expect(found.line("appliances")).toBe(String(3000 + 12000 + 8000 + 10000 + 4000 + 500 + 1500 + 7200 + 6000 + 2000 + 3000));
    expect(found.total).toBe(10000 + 0.4 * (7500 + 57200 - 10000));
  });
  it("heating and cooling stand apart from the appliances, a dryer at its nameplate", () => {
    const found = of("optional", {}, [fresh("heating", 1000), fresh("cooling", 1000), fresh("dryer", 5000, { nameplates: [4500] })]);
    expect(found.line("appliances")).toBe("4500");
    expect(found.total).toBe(10000 + 0.4 * 2000 + 1000);
  });

  it.each<readonly [string, Dwelling["climate"], readonly NewLoad[], Readonly<Record<string, string>>]>([
    ["cooling alone", [climate("cooling", 5000)], [], { "cooling-1": "5000", climate: "5000" }],
    ["cooling there and new", [climate("cooling", 1000)], [fresh("cooling", 2500)], { "cooling-1": "3500", climate: "3500" }],
    ["a heat pump alone", [climate("heat-pump", 4000)], [], { "heat-pump-1": "4000", climate: "4000" }],
    // 4,000 + 0.65 × 6,000
    ["a heat pump and its heat", [climate("heat-pump", 4000, { supplement: 6000 })], [], { "heat-pump-1": "7900", climate: "7900" }],
    ["interlocked", [climate("heat-pump", 4000, { supplement: 10000, interlocked: true })], [], { "heat-pump-1": "6500", climate: "6500" }],
    [
      "two, one of them interlocked: 5,000 + 0.65 × 2,000",
      [climate("heat-pump", 4000, { supplement: 2000, interlocked: true }), climate("heat-pump", 1000)],
      [],
      { "heat-pump-1": "6300", climate: "6300" },
    ],
    [
      "interlocked, with space heating beside it, is not: 4,000 + 0.65 × 11,000",
      [climate("heat-pump", 4000, { supplement: 10000, interlocked: true }), climate("space-heating", 1000)],
      [],
      { "heat-pump-1": "11150", climate: "11150" },
    ],
    [
      "cooling with a pump that cools, and heat with both: 4,000 + 0.65 × 9,000",
      [climate("cooling", 5000), climate("heat-pump", 4000, { supplement: 6000 }), climate("space-heating", 3000, { controls: 2 })],
      [],
      { "cooling-1": "9000", "heat-pump-2": "9850", climate: "9850" },
    ],
    ["three controls", [climate("space-heating", 3000, { controls: 3 })], [], { "space-heating-1": "1950", climate: "1950" }],
    ["three and a new one", [climate("space-heating", 3000, { controls: 3 })], [fresh("heating", 1000)], { "space-heating-1": "1600", climate: "1600" }],
    [
      "two and two",
      [climate("space-heating", 3000, { controls: 2 }), climate("space-heating", 1000, { controls: 2 })],
      [],
      { "space-heating-1": "1600", climate: "1600" },
    ],
    ["storage", [climate("thermal-storage", 2000), climate("cooling", 1000)], [], { "cooling-1": "1000", "thermal-storage-2": "2000", climate: "2000" }],
    ["none", [], [], { climate: "0" }],
  ])("%s", (_name, there, added, lines) => {
    const { steps } = houseLoad({ id: "x", dwelling: dwelling({ climate: there }), added, method: "optional", edition: "2023" });
    const climates = steps.filter(({ id }) => /^x\.(cooling|heat-pump|space-heating|thermal-storage|climate)/.test(id));
    expect(Object.fromEntries(climates.map(({ id, value }) => [id.slice(2), value]))).toEqual(lines);
  });
});

describe("neutral of the service, 220.61", () => {
  it("lighting after demand, appliances to the neutral with a quarter of their largest motor, 70 % of cooking and dryers, new work by its leg", () => {
    const house = dwelling({
      appliances: [
        { name: "pumps", load: 1000, count: 2, motor: true, neutral: true },
        { name: "heater", load: 2000, count: 1, motor: false, neutral: true },
        { name: "240 V pump", load: 3000, count: 1, motor: true, neutral: false },
      ],
      cooking: [{ name: "range", load: 12000, count: 1 }],
      dryers: [{ name: "dryer", load: 5000, count: 1 }],
    });
    const added = [
      fresh("cooking", 8000, { nameplates: [12000], neutralVA: "5000" }),
      fresh("dryer", 5000, { neutralVA: "3000" }),
      fresh("whole", 6000, { neutralVA: "6000" }),
      fresh("fixed", 100, { neutralVA: "100" }),
    ];
    const { total, steps } = serviceNeutral({ id: "n", dwelling: house, added, volts: 240, edition: "2023" });
    expect(steps.map(({ id, value }) => `${id} ${value}`)).toEqual([
      "n.line-to-neutral 14925",
      "n.cooking 7700",
      "n.dryers 7000",
      "n.sum 29625",
      "n.amperes 123.4375",
      "n.total 123.4375",
    ]);
    expect(total.value).toBe("123.4375");
    expect(steps[0]?.expression).toBe("4,575 VA (lighting) + 4,000 VA (appliances) + 250 VA (motor) + 6,100 VA (new work)");
    expect(steps[1]?.expression).toBe("11,000 VA × 0.70");
  });
  it("a house without motors or appliances", () => {
    const { steps } = serviceNeutral({ id: "n", dwelling: dwelling(), added: [], volts: 240, edition: "2023" });
    expect(steps[0]?.expression).toBe("4,575 VA (lighting) + 0 VA (appliances) + 0 VA (motor) + 0 VA (new work)");
  });
});
