import { describe, expect, it } from "vitest";
import type { Job } from "../src/job/schema.js";
import { feederLoad } from "../src/service/feeder-legs.js";
import { oneCircuit, way as route } from "./one-circuit.js";
import { measured, plainJob } from "./plain-job.js";
import { readWritten } from "./read-written.js";

// What a new circuit or feeder puts on the service, as its printed line says it; arithmetic by hand.
// biome-ignore lint/suspicious/noExplicitAny: fields of a job as written
type Fields = Record<string, any>;

const poles = (n: 1 | 2, ...spaces: number[]) => ({ poles: n, spaces, gfci: true });
const shown = (fields: Fields) => {
  const { expression, value } = oneCircuit(fields).load;
  return `${expression} = ${value}`;
};
const cites = (fields: Fields) => oneCircuit(fields).load.citations.map(({ section }) => section);

const INLET = { serves: "generator-inlet", current: "30 A", nameplate: { neutral_bonded: false, transfer: "manual-switch" } };

describe("the load of a circuit", () => {
  it.each<readonly [string, Fields, string]>([
    ["as entered", { serves: "rv-50", current: "50 A", load: "9 kVA" }, "9,000 VA as entered = 9000"],
    ["an outlet: volts × amperes", { serves: "rv-50", current: "50 A" }, "240 V × 50 A = 12000"],
    ["of one hot", { serves: "rv-30", current: "30 A", breaker: poles(1, 1) }, "120 V × 30 A = 3600"],
    ["a tub", { serves: "spa", current: "40 A" }, "240 V × 40 A = 9600"],
    ["EV supply under 7,200 VA (220.57)", { serves: "ev-supply", current: "24 A" }, "max(7,200 VA; 240 V × 24 A) = 7200"],
    ["EV supply over it", { serves: "ev-supply", current: "48 A" }, "max(7,200 VA; 240 V × 48 A) = 11520"],
    ["a range: column C, one", { serves: "range", nameplate: { load: "12 kW" } }, "8,000 VA = 8000"],
    ["a dryer: 5,000 VA at least", { serves: "dryer", nameplate: { load: "4.5 kW" } }, "5,000 VA = 5000"],
    ["a dryer without a nameplate", { serves: "dryer" }, "5,000 VA = 5000"],
    ["a water heater: its nameplate", { serves: "water-heater", nameplate: { load: "4.5 kW" } }, "4,500 VA = 4500"],
    ["heat with its blower", { serves: "heat", nameplate: { load: "10 kW", fan: "3 A" } }, "10,000 VA + 240 V × 3 A = 10720"],
    ["heat without", { serves: "heat", nameplate: { load: "10 kW" } }, "10,000 VA = 10000"],
    [
      "an air conditioner: by its least ampacity",
      { serves: "air-conditioner", nameplate: { minimum_ampacity: "20 A", largest_overcurrent: "30 A" } },
      "240 V × 20 A = 4800",
    ],
    ["a generator's inlet: a source", INLET, "0 VA = 0"],
  ])("%s", (_name, fields, expected) => expect(shown(fields)).toBe(expected));

  it("names its source", () => {
    expect(cites({ serves: "rv-50", current: "50 A", load: "9 kVA" })).toEqual(["load as entered"]);
    expect(cites({ serves: "rv-50", current: "50 A" })).toEqual(["volts × amperes as a fixed load"]);
    expect(cites({ serves: "spa", current: "40 A" })).toEqual(["220.14(A)"]);
    expect(cites({ serves: "ev-supply", current: "24 A" })).toEqual(["220.57"]);
    expect(cites({ serves: "heat", nameplate: { load: "10 kW" } })).toEqual(["220.14(A)"]);
    expect(cites({ serves: "air-conditioner", nameplate: { minimum_ampacity: "20 A", largest_overcurrent: "30 A" } })).toEqual(["430.24"]);
    expect(cites({ serves: "welder", current: "40 A", nameplate: { duty_percent: 60 } })).toEqual(["630.11"]);
    expect(cites(INLET)).toEqual(["a source, which adds no load"]);
  });
  it("the demand of a range or dryer stands before it, line by line", () => {
    const made = oneCircuit({ serves: "dryer" });
    const at = made.steps.findIndex(({ id }) => id === "c.load");
    expect(made.steps.slice(at - 3, at).map(({ id }) => id)).toEqual(["c.dryer.connected", "c.dryer.percent", "c.dryer.total"]);
    expect(made.load.inputs).toEqual(["c.dryer.total"]);
    expect(oneCircuit({ serves: "air-conditioner", nameplate: { minimum_ampacity: "20 A", largest_overcurrent: "30 A" } }).load.inputs).toHaveLength(1);
  });
});

describe("the load of a feeder, leg by leg", () => {
  const rv = (id: string, serves: string, current: string, breaker: Fields) => ({ id, name: id, serves, current, breaker, route });
  const heater = { id: "wh", name: "wh", serves: "water-heater", nameplate: { load: "4.8 kW" }, breaker: poles(2, 5, 7), route };
  function load(panel: Fields, feeder: Fields = {}) {
    const fed = { id: "fed", name: "Fed", bus: "125 A", spaces: 12, ...panel };
    const f = { id: "f", name: "F", building: "same", breaker: { ...poles(2, 1, 3), gfci: false }, route, ...feeder, panel: fed };
    const job: Job = readWritten(plainJob({ service: measured("8 kW"), panel: { feeders: [f] } }));
    return feederLoad(job.service.panel.feeders[0]!, "2023");
  }
  const stand = [rv("a", "rv-50", "50 A", poles(2, 1, 3)), rv("b", "rv-30", "30 A", poles(1, 2)), rv("c", "receptacle-20", "20 A", poles(1, 4))];

  it("two poles in halves, one pole on the leg of its space: odd and even rows alternate", () => {
    const found = load({ circuits: stand });
    expect(found.legs.L1.expression).toBe("6,000 VA (a) + 3,600 VA (b) + 0 VA (c)");
    expect(found.legs.L2.expression).toBe("6,000 VA (a) + 0 VA (b) + 2,400 VA (c)");
    expect([found.total.expression, found.total.value]).toEqual(["9,600 VA + 8,400 VA", "18000"]);
    expect([found.amperes.label, found.amperes.expression, found.amperes.value]).toEqual(["Current on the heavier leg, L1", "9,600 VA / 120 V", "80"]);
    expect([found.neutral.expression, found.neutral.value]).toEqual(["max(9,600 VA; 8,400 VA) / 120 V", "80"]);
    expect([found.counted, found.leftOut]).toEqual([["a", "b", "c"], []]);
    expect(found.legs.L1.citations.map(({ section }) => section)).toEqual(["220.40"]);
    expect([found.total.inputs, found.amperes.inputs]).toEqual([["f.load.L1", "f.load.L2"], ["f.load.L1"]]);
    expect(found.neutral.citations.map(({ section }) => section)).toEqual(["220.61(A)"]);
  });
  it("the other leg is named where it is the heavier, the first where they are even", () => {
    expect(load({ circuits: [rv("c", "receptacle-20", "20 A", poles(1, 3))] }).amperes.label).toBe("Current on the heavier leg, L2");
    expect(load({ circuits: [stand[0]!] }).amperes.label).toBe("Current on the heavier leg, L1");
  });
  it("one RV stand counts once, by its largest; what is no outlet of a stand beside it", () => {
    const site = load({ circuits: [...stand, heater] }, { demand: "rv-site" });
    expect([site.counted, site.leftOut, site.total.value]).toEqual([["a", "wh"], ["b", "c"], String(12000 + 4800)]);
    expect(site.legs.L1.citations.map(({ section }) => section)).toEqual(["220.40", "551.73(A)"]);
    expect(load({ circuits: [heater] }, { demand: "rv-site" }).leftOut).toEqual([]);
    const twins = load({ circuits: [rv("x", "rv-30", "30 A", poles(1, 2)), rv("y", "rv-30", "30 A", poles(1, 4))] }, { demand: "rv-site" });
    expect([twins.counted, twins.leftOut]).toEqual([["x"], ["y"]]);
  });
  it("240 V loads leave the neutral; what is continuous is told apart", () => {
    const found = load({ circuits: [heater] });
    expect([found.neutral.value, found.amperes.value, found.continuousAmperes]).toEqual(["0", "20", "20"]);
    expect(load({ circuits: [stand[0]!] }).continuousAmperes).toBe("0");
  });
  it("what the panel carries already is even on both legs, on the neutral too, and is nothing new upstream", () => {
    const found = load({ existing_load: "4 kVA", circuits: [heater] });
    expect(found.legs.L2.expression).toBe("2,000 VA (Fed as it stands) + 2,400 VA (wh)");
    expect([found.total.value, found.addedVA, found.neutral.expression]).toEqual(["8800", "4800", "max(2,000 VA; 2,000 VA) / 120 V"]);
  });
  it("a panel beyond counts by its parts: legs, continuous load, neutral, what it carried", () => {
    const inner = {
      id: "g",
      name: "G",
      building: "same",
      breaker: { ...poles(2, 9, 11), gfci: false },
      route,
      panel: {
        id: "beyond",
        name: "Beyond",
        bus: "100 A",
        spaces: 8,
        existing_load: "1 kVA",
        circuits: [{ ...heater, id: "w2" }, rv("d", "rv-30", "30 A", poles(1, 3))],
      },
    };
    const found = load({ circuits: [heater], feeders: [inner] });
    expect([found.legs.L1.expression, found.legs.L2.expression]).toEqual(["2,400 VA (wh) + 2,900 VA (G)", "2,400 VA (wh) + 6,500 VA (G)"]);
    expect([found.neutral.expression, found.continuousAmperes, found.addedVA]).toEqual(["max(500 VA; 4,100 VA) / 120 V", "40", String(14200 - 1000)]);
  });
  it("a panel with nothing on it", () => {
    const found = load({});
    expect([found.legs.L1.expression, found.total.value, found.amperes.value, found.addedVA]).toEqual(["0 VA", "0", "0", "0"]);
  });
});
