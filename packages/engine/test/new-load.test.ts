import { describe, expect, it } from "vitest";
import { design } from "../src/design.js";
import { circuitLoad, feederNewLoad } from "../src/service/new-load.js";
import { oneCircuit, way as route, written } from "./one-circuit.js";
import { measured, plainJob } from "./plain-job.js";
import { readWritten } from "./read-written.js";

// How the new work is told to the load methods: its kind, its nameplates, what it puts on the neutral; by hand.
// biome-ignore lint/suspicious/noExplicitAny: fields of a job as written
type Fields = Record<string, any>;

const breaker = { poles: 2, spaces: [1, 3], gfci: true };
const of = (fields: Fields) => circuitLoad(oneCircuit(fields));

describe("the new load of a circuit", () => {
  it.each<readonly [string, Fields, string]>([
    ["rv-50", { current: "50 A" }, "whole"],
    ["ev-supply", { current: "32 A" }, "ev"],
    ["range", { nameplate: { load: "12 kW" } }, "cooking"],
    ["dryer", {}, "dryer"],
    ["water-heater", { nameplate: { load: "4.5 kW" } }, "fixed"],
    ["heat", { nameplate: { load: "10 kW" } }, "heating"],
    ["air-conditioner", { nameplate: { minimum_ampacity: "20 A", largest_overcurrent: "30 A" } }, "cooling"],
    ["motor", { current: "26 A", nameplate: { horsepower: "5" } }, "motor"],
  ])("%s: by its kind", (serves, fields, kind) => expect(of({ serves, ...fields }).kind).toBe(kind));

  it("nameplates where a demand table goes by them, else the load itself", () => {
    expect(of({ serves: "range", nameplate: { load: "12 kW" } })).toMatchObject({ va: "8000", nameplates: [12000] });
    const parts = [
      { is: "cooktop", load: "6 kW" },
      { is: "oven", load: "4 kW" },
    ];
    expect(of({ serves: "range", nameplate: { cooking: parts } }).nameplates).toEqual([6000, 4000]);
    expect(of({ serves: "dryer", nameplate: { load: "5.5 kW" } }).nameplates).toEqual([5500]);
    expect(of({ serves: "dryer" }).nameplates).toEqual([5000]);
    expect(of({ serves: "water-heater", nameplate: { load: "4.5 kW" } })).toMatchObject({ va: "4500", nameplates: [4500], id: "c.load", name: "C", evVA: "0" });
  });
  it("the neutral: a 120/240 V load by its half on each leg, a 120 V one whole on one, none of 240 V alone", () => {
    expect(of({ serves: "rv-50", current: "50 A" }).neutralVA).toBe("12000");
    expect(of({ serves: "rv-30", current: "30 A", breaker: { ...breaker, poles: 1, spaces: [1] } }).neutralVA).toBe("7200");
    expect(of({ serves: "ev-supply", current: "32 A" }).neutralVA).toBe("0");
  });
});

describe("the new load of a feeder", () => {
  const panel = {
    id: "fed",
    name: "Fed",
    bus: "125 A",
    spaces: 12,
    circuits: [
      written({ id: "ev", name: "EV", serves: "ev-supply", current: "40 A" }),
      written({ id: "rv", name: "RV", serves: "rv-50", current: "50 A", breaker: { ...breaker, spaces: [5, 7] } }),
    ],
  };
  const feeder = { id: "f", name: "F", building: "same", breaker: { ...breaker, gfci: false }, route, panel };
  const { feeders, circuits } = design({ job: readWritten(plainJob({ service: measured("8 kW"), panel: { feeders: [feeder] } })) });
  it("EV supply behind it apart: 9,600 VA of 21,600; never more than is new", () => {
    expect(feederNewLoad(feeders[0]!, "21600", circuits)).toMatchObject({ name: "F", kind: "whole", va: "21600", nameplates: [21600], evVA: "9600" });
    expect(feederNewLoad(feeders[0]!, "9600", circuits).evVA).toBe("9600");
    expect(feederNewLoad(feeders[0]!, "9000", circuits).evVA).toBe("9000");
    expect(feederNewLoad(feeders[0]!, "12000", []).evVA).toBe("0");
  });
  it("its neutral over both legs: 50 A of the RV outlet × 240 V", () => expect(feederNewLoad(feeders[0]!, "21600", circuits).neutralVA).toBe("12000"));
});
