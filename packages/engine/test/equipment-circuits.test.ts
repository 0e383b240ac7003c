import { readdirSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { stringify } from "yaml";
import { unamended } from "../src/basis/basis.js";
import { EDITIONS, type Edition } from "../src/basis/edition.js";
import { design } from "../src/design.js";
import { EQUIPMENT_KINDS, type EquipmentKind } from "../src/equipment/equipment.js";
import { readJob } from "../src/job/read.js";
import { MOTOR_CURRENT } from "../src/tables/motor-current.js";
import { redo } from "./redo.js";

// biome-ignore lint/suspicious/noExplicitAny: a circuit as written
type Written = any;

function job(circuits: Written[], feeder: boolean, edition: Edition = "2023"): Written {
  const route = [{ name: "way", place: "indoors", method: "EMT", length: "40 ft" }];
  const panel = { bus: "225 A", spaces: 40 };
  return {
    format: "branchwork-job/1",
    project: { title: "Test", owner: "A. Nonesuch", site: "1 Example Way", preparer: { name: "A. Nonesuch", role: "owner" } },
    code: { edition },
    service: {
      rating: "200 A",
      load_method: "measured-demand",
      measured: { peak: "8 kW", basis: "one-year", from: "the utility" },
      panel: {
        id: "p",
        name: "Panel",
        ...panel,
        ...(feeder
          ? {
              feeders: [
                {
                  id: "f",
                  name: "Feeder",
                  breaker: { poles: 2, spaces: [1, 3], gfci: false },
                  building: "same",
                  route,
                  panel: { id: "q", name: "Fed", ...panel, circuits },
                },
              ],
            }
          : { circuits }),
      },
    },
  };
}
const circuit = (serves: string, fields: Written = {}, rating?: string): Written => ({
  id: "c",
  name: "Circuit",
  serves,
  breaker: { poles: 2, spaces: [5, 7], gfci: true, ...(rating ? { rating } : {}) },
  route: [{ name: "way", place: "indoors", method: "EMT", length: "40 ft" }],
  ...fields,
});
function made(written: Written, edition?: Edition) {
  const read = readJob(stringify(written, { keepUndefined: false }));
  if (!read.ok) throw new Error(JSON.stringify(read.issues));
  return design({ job: read.job, ...(edition ? { basis: unamended(edition) } : {}) });
}
const of = (serves: string, fields: Written = {}, rating?: string, edition?: Edition) =>
  made(job([circuit(serves, fields, rating)], false, edition)).circuits[0]!;
const inShort = (c: ReturnType<typeof of>) => [c.rating, c.segments[0]!.conductor.size, c.segments[0]!.grounding.size, c.load.value];

/** Sizes at 60 °C terminals from Table 310.16 copper: 10 AWG 30 A, 8 AWG 40 A, 6 AWG 55 A; grounds from Table 250.122. */
describe("a circuit of each kind, by hand", () => {
  it("range of 12 kW: column C of Table 220.55 gives 8,000 VA, 33.3 A, 40 A by 210.19(A)(3): 8 AWG, 10 AWG ground", () =>
    expect(inShort(of("range", { nameplate: { load: "12 kW" } }))).toEqual(["40", "8", "10", "8000"]));
  it("dryer of 4.5 kW: 5,000 VA by 220.54, 30 A outlet: 10 AWG", () =>
    expect(inShort(of("dryer", { nameplate: { load: "4.5 kW" } }))).toEqual(["30", "10", "10", "5000"]));
  it("storage water heater of 4.5 kW: 18.75 A × 1.25 = 23.4 A, so 25 A and 10 AWG", () =>
    expect(inShort(of("water-heater", { nameplate: { load: "4.5 kW", gallons: 50 } }))).toEqual(["25", "10", "10", "4500"]));
  it("heat of 5 kW: 20.8 A × 1.25 = 26.04 A, so 30 A and 10 AWG", () =>
    expect(inShort(of("heat", { nameplate: { load: "5 kW" } }))).toEqual(["30", "10", "10", "5000"]));
  it("spa of 40 A marked 50 A: 50 A by 125 %, four wires, 6 AWG", () => {
    const c = of("spa", { current: "40 A", nameplate: { largest_overcurrent: "50 A" } });
    expect([...inShort(c), c.wires]).toEqual(["50", "6", "10", "9600", 4]);
    expect(of("spa", { current: "40 A", nameplate: { neutral: false } }).wires).toBe(3);
  });
  it("welder of 40 A at 30 %: 22 A (0.55 in Table 630.11(A)); 12 AWG (20 A at 60 °C) is too small, so 10 AWG stands behind 50 A", () =>
    expect(inShort(of("welder", { current: "40 A", nameplate: { duty_percent: 30 } }, "50 A")).slice(0, 2)).toEqual(["50", "10"]));
  it("air conditioner marked 22 A and 35 A: 10 AWG behind 35 A", () =>
    expect(inShort(of("air-conditioner", { nameplate: { minimum_ampacity: "22 A", largest_overcurrent: "35 A" } }))).toEqual(["35", "10", "10", "5280"]));
  it("air conditioner marked 15 A and 35 A: 14 AWG, and its ground no larger than it, 250.122(A), though the table says 10 AWG at 60 A", () =>
    expect(inShort(of("air-conditioner", { nameplate: { minimum_ampacity: "15 A", largest_overcurrent: "35 A" } }))).toEqual(["35", "14", "14", "3600"]));
  it("motor of 5 hp at 230 V: 28 A (Table 430.248) × 1.25 = 35 A is 8 AWG, and 250 % = 70 A", () =>
    expect(inShort(of("motor", { current: "26 A", nameplate: { horsepower: "5" } })).slice(0, 2)).toEqual(["70", "8"]));
  it("generator inlet of 30 A: a source, 0 VA, 10 AWG on 30 A, four wires", () => {
    const c = of("generator-inlet", { current: "30 A", nameplate: { neutral_bonded: false, transfer: "interlock" } });
    expect([...inShort(c), c.wires, c.equipment.source]).toEqual(["30", "10", "10", "0", 4, true]);
  });
  it("EV supply on a 14-50R of 40 A: 50 A, 6 AWG, and a neutral to the outlet", () => {
    const c = of("ev-supply", { current: "40 A", connection: "14-50R" });
    expect([...inShort(c), c.wires, c.equipment.receptacle?.amperes]).toEqual(["50", "6", "10", "9600", 4, 50]);
  });
  it("receptacle-20: 12 AWG on 20 A, one pole", () => {
    const c = of("receptacle-20", { breaker: { poles: 1, spaces: [5], gfci: true } });
    expect([...inShort(c), c.volts, c.equipment.poles]).toEqual(["20", "12", "12", "2400", 120, 1]);
  });
  it("a feeder behind it counts each by its kind, and 125 % of what is continuous alone", () => {
    const behind = (...circuits: Written[]) => made(job(circuits, true)).feeders[0]!;
    // 8,000 VA at 240 V, not continuous: 33.3 A.
    expect(Number(behind(circuit("range", { nameplate: { load: "12 kW" } })).terminalLoad)).toBeCloseTo(33.333, 2);
    // 9,600 VA at 240 V is 40 A on each leg, continuous: 50 A.
    expect(behind(circuit("spa", { current: "40 A" })).terminalLoad).toBe("50");
    // 28 A × 1.25 × 240 V, the 125 % once: 35 A.
    expect(behind(circuit("motor", { current: "26 A", nameplate: { horsepower: "5" } })).terminalLoad).toBe("35");
    expect(behind(circuit("generator-inlet", { current: "30 A", nameplate: { neutral_bonded: false, transfer: "interlock" } })).load.value).toBe("0");
  });
});

const amps = (min: number, max: number) => fc.integer({ min, max }).map((n) => `${n} A`);
const watts = fc.integer({ min: 100, max: 80000 }).map((n) => `${n} W`);
const maybe = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: undefined });
const cooking = fc.constantFrom(["range"], ["oven"], ["cooktop"], ["cooktop", "oven"], ["cooktop", "oven", "oven"]);
const connection = (...of: string[]) => maybe(fc.constantFrom("hard-wired", ...of));
const volts = maybe(fc.constantFrom(120, 240));

const FIELDS: Readonly<Record<EquipmentKind, fc.Arbitrary<Written>>> = {
  "rv-50": fc.record({ current: maybe(amps(1, 400)) }),
  "rv-30": fc.record({ current: maybe(amps(1, 400)) }),
  "receptacle-20": fc.record({ several: maybe(fc.boolean()), weather_resistant: maybe(fc.boolean()) }),
  "receptacle-15": fc.record({ several: maybe(fc.boolean()), afci: maybe(fc.boolean()) }),
  general: fc.record({ current: amps(1, 400) }),
  "ev-supply": fc.record({
    current: amps(1, 400),
    connection: connection("14-50R", "6-50R"),
    nameplate: fc.record({ largest_overcurrent: maybe(amps(10, 400)) }),
  }),
  spa: fc.record({
    current: amps(1, 400),
    nameplate: fc.record({
      largest_overcurrent: maybe(amps(10, 400)),
      neutral: maybe(fc.boolean()),
      integral_gfci: maybe(fc.boolean()),
      field_heater: maybe(amps(1, 400)),
      disconnect_distance: maybe(fc.integer({ min: 0, max: 60 }).map((n) => `${n} ft`)),
    }),
  }),
  range: fc.oneof(
    fc.record({ connection: connection("14-50R", "14-30R"), nameplate: fc.record({ load: watts, largest_overcurrent: maybe(amps(10, 400)) }) }),
    fc.tuple(cooking, watts).map(([kinds, load]) => ({ nameplate: { cooking: kinds.map((is) => ({ is, load })) } })),
  ),
  dryer: fc.record({ nameplate: fc.record({ load: maybe(watts) }) }),
  "water-heater": fc.record({
    nameplate: fc.record({
      load: fc.integer({ min: 100, max: 20000 }).map((n) => `${n} W`),
      volts,
      gallons: maybe(fc.integer({ min: 0, max: 500 })),
      largest_overcurrent: maybe(amps(10, 400)),
    }),
  }),
  heat: fc.record({ nameplate: fc.record({ load: fc.integer({ min: 100, max: 20000 }).map((n) => `${n} W`), volts, fan: maybe(amps(0, 100)) }) }),
  welder: fc.record({
    current: amps(1, 400),
    connection: connection("14-50R"),
    nameplate: fc.record({
      duty_percent: fc.integer({ min: 1, max: 100 }),
      welder: maybe(fc.constantFrom("nonmotor", "motorGenerator")),
      effective: maybe(amps(1, 400)),
      maximum: maybe(amps(1, 400)),
    }),
  }),
  "air-conditioner": fc.oneof(
    fc.record({ nameplate: fc.record({ minimum_ampacity: amps(1, 400), largest_overcurrent: amps(10, 400) }) }),
    fc.record({ nameplate: fc.record({ compressor: amps(1, 400), others: maybe(amps(0, 100)) }) }),
  ),
  motor: fc.record({
    current: amps(1, 200),
    nameplate: fc.record({
      horsepower: fc.constantFrom(...Object.keys(MOTOR_CURRENT.rows)),
      volts,
      service_factor: maybe(fc.constantFrom(1, 1.15, 1.25)),
      rise_c: maybe(fc.integer({ min: 10, max: 180 })),
    }),
  }),
  "generator-inlet": fc.record({
    current: fc.constantFrom("20 A", "30 A", "50 A"),
    nameplate: fc.record({
      load: maybe(watts),
      neutral_bonded: fc.boolean(),
      transfer: fc.constantFrom("interlock", "manual-switch", "manual-switch-with-neutral", "automatic", "automatic-with-neutral"),
    }),
  }),
};
const any = fc.constantFrom(...EQUIPMENT_KINDS).chain((serves) =>
  fc.record({
    serves: fc.constant(serves),
    fields: FIELDS[serves],
    place: maybe(fc.constantFrom("indoors", "outdoors", "garage", "kitchen", "laundry", "basement")),
    disconnect: maybe(fc.constantFrom("in-sight", "lockable-breaker", "plug", "none")),
    rating: maybe(fc.integer({ min: 10, max: 400 }).map((n) => `${n} A`)),
    poles: fc.constantFrom(1, 2),
    feeder: fc.boolean(),
    edition: fc.constantFrom(...EDITIONS),
  }),
);

describe("any equipment the schema takes", () => {
  it("designs in every edition without a throw; its lines are finite, cited, their ids unlike, and a pencil can redo them", () =>
    fc.assert(
      fc.property(any, ({ serves, fields, place, disconnect, rating, poles, feeder, edition }) => {
        const spaces = poles === 1 ? [5] : [5, 7];
        const written = circuit(serves, { ...fields, place, disconnect, breaker: { poles, spaces, gfci: false, ...(rating ? { rating } : {}) } });
        const result = made(job([written], feeder, edition));
        const c = result.circuits[0]!;
        expect(new Set(c.steps.map((s) => s.id)).size).toBe(c.steps.length);
        for (const step of c.steps) {
          if (step.unit !== "AWG/kcmil") expect(step.value, step.id).toMatch(/^-?\d+(\.\d+)?$/);
          expect(step.citations.length + step.inputs.length, step.id).toBeGreaterThan(0);
        }
        for (const step of c.steps.filter((s) => s.id === "c.load" || s.id === "c.ampacity" || s.id === "c.current")) {
          const pencil = redo(step.expression.replaceAll(";", ",").replace(/\bW\b/g, "").replace(" as entered", ""));
          expect(Math.abs(pencil - Number(step.value)), `${step.expression} = ${step.value}`).toBeLessThanOrEqual(Math.max(0.6, Number(step.value) * 0.005));
        }
        for (const said of [c.equipment.disconnect, c.equipment.gfci, ...c.equipment.notes]) expect(said.says.length).toBeGreaterThan(10);
        expect(c.equipment.poles).toBe(c.volts === 240 ? 2 : 1);
        // What fits by itself, open sizes and an open breaker, passes the checks that only compute.
        if (rating === undefined && c.equipment.overcurrent.least !== null && c.equipment.overcurrent.most !== null) {
          const { least, most } = c.equipment.overcurrent;
          const verdicts = result.findings.filter((f) => f.subject === c.run.name && ["breaker-carries-load", "breaker-within-bounds"].includes(f.check));
          if (least.rating <= most.rating) for (const f of verdicts) expect(f.verdict, f.check).not.toBe("fail");
        }
      }),
      { numRuns: Number(process.env.BRANCHWORK_RUNS ?? 250) },
    ));
});

describe("the invented jobs of equipment", () => {
  const folder = new URL("../../../fixtures/jobs/", import.meta.url);
  it.each(["hot-tub.yaml", "workshop-welder.yaml", "generator-inlet.yaml", "range.yaml"])("%s is ready", (name) => {
    expect(readdirSync(folder)).toContain(name);
    const read = readJob(readFileSync(new URL(name, folder), "utf8"));
    if (!read.ok) throw new Error(JSON.stringify(read.issues));
    const result = design({ job: read.job, assumptions: read.assumptions });
    expect(result.findings.filter((f) => f.verdict === "fail").map((f) => [f.check, f.subject, f.says])).toEqual([]);
    expect(result.ready).toBe(true);
  });
});
