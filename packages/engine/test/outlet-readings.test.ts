import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { design } from "../src/design.js";
import { inspectionChecklist } from "../src/inspection/checklist.js";
import { readJob } from "../src/job/read.js";
import { acceptanceTest, readingWords } from "../src/readings/acceptance.js";
import { diagnoseOutlet, entryProblems } from "../src/readings/entered.js";
import { faultTable } from "../src/readings/fault-table.js";
import { outletCircuit, wiringShape } from "../src/readings/outlet-circuit.js";
import { outletUse } from "../src/readings/outlet-use.js";
import { readReadings } from "../src/readings/readings-file.js";
import { changesBetween } from "../src/revision/changes.js";
import { measured, plainJob } from "./plain-job.js";
import { readWritten } from "./read-written.js";

// biome-ignore lint/suspicious/noExplicitAny: a job as written, bent by each row before it is read
type Written = any;

const breaker = (spaces: readonly number[], rating: string) => ({
  rating,
  poles: spaces.length,
  spaces,
  gfci: true,
  listed_for_panel: true,
  interrupting_kA: 10,
});
const wall = (feet: number, more: object = {}) => [{ name: "Wall", place: "outdoors", method: "PVC-80", length: `${feet} ft`, ...more }];

function designed(circuits: readonly object[], bend: (job: Written) => void = () => undefined) {
  const job: Written = plainJob({
    code: { confirmed_with_authority: true },
    service: measured("10 kW"),
    panel: { id: "a", name: "Panel", main: "200 A", spaces: 40, circuits },
  });
  bend(job);
  return design({ job: readWritten(job) });
}
const RV50 = {
  id: "c",
  name: "Outlet",
  serves: "rv-50",
  current: "50 A",
  breaker: breaker([5, 7], "50 A"),
  route: wall(100, { conductors: { size: "6", grounding: "10" } }),
};

describe("an outlet is read by its wiring, whatever it serves", () => {
  it.each([
    ["rv-50", { ...RV50 }, "four-wire"],
    ["rv-30", { ...RV50, serves: "rv-30", current: "30 A", breaker: breaker([5], "30 A") }, "one-hot"],
    ["ev-supply", { ...RV50, serves: "ev-supply", current: "32 A", breaker: breaker([5, 7], "40 A") }, "two-hot"],
    ["range", { ...RV50, serves: "range", current: undefined, nameplate: { load: "12 kW" } }, "four-wire"],
    ["dryer", { ...RV50, serves: "dryer", current: undefined, nameplate: { load: "5 kW" }, breaker: breaker([5, 7], "30 A") }, "four-wire"],
    ["welder", { ...RV50, serves: "welder", current: "45 A", nameplate: { duty_percent: 40 } }, "two-hot"],
    ["receptacle-20", { ...RV50, serves: "receptacle-20", current: "20 A", breaker: breaker([5], "20 A") }, "one-hot"],
  ] as const)("%s", (_serves, circuit, shape) => {
    const made = designed([circuit]);
    const [outlet] = made.circuits;
    expect(wiringShape(outlet!)).toBe(shape);
    const test = acceptanceTest(made, outlet!);
    // Readings of each wiring: two between hots and to ground three, with a neutral six; one hot three.
    expect(test.idle).toHaveLength({ "four-wire": 6, "one-hot": 3, "two-hot": 3 }[shape]);
    expect(test.loaded).toHaveLength(shape === "four-wire" ? 2 : 1);
    for (const { load } of test.loaded) expect(load.amperes).toBeLessThanOrEqual(Number(outlet!.rating));
    for (const band of [...test.idle, ...test.loaded.flatMap((set) => set.bands)])
      expect(band.least <= band.simulated && band.simulated <= band.most, band.reading).toBe(true);
  });
  it("names each reading as the sheet prints it", () => {
    expect(readingWords("L1-N", "one-hot")).toBe("Hot to neutral");
    expect(readingWords("L1-L2", "two-hot")).toBe("Line 1 to line 2");
  });
});

describe("the run that is simulated", () => {
  // Chapter 9 Table 8 (memory): 6 AWG copper 0.491 Ω, 10 AWG 1.24 Ω, 1/0 aluminum 0.201 Ω per 1000 ft.
  it("100 ft of 6 AWG: 0.0491 Ω a conductor, ground 0.124 Ω", () => {
    const made = designed([RV50]);
    const { run, feet } = outletCircuit(made, made.circuits[0]!);
    expect([run.hot1, run.neutral, run.ground, feet]).toEqual([expect.closeTo(0.0491, 8), expect.closeTo(0.0491, 8), expect.closeTo(0.124, 8), 100]);
  });
  it("a stretch of 0 ft gives volts all the same", () => {
    const made = designed([{ ...RV50, route: wall(0) }]);
    for (const band of acceptanceTest(made, made.circuits[0]!).idle) expect(Number.isFinite(band.simulated)).toBe(true);
  });
  it("a feeder's stretches are in it: 100 ft of 1/0 aluminum above 100 ft of 6 AWG copper make 0.0201 + 0.0491 Ω", () => {
    const made = designed([], (job) => {
      job.service.panel.feeders = [
        {
          id: "f",
          name: "Feeder",
          breaker: breaker([9, 11], "100 A"),
          building: "same",
          terminals_75C: true,
          route: wall(100, { conductors: { size: "1/0", material: "aluminum", grounding: "4" } }),
          panel: { id: "b", name: "Panel B", bus: "125 A", spaces: 12, circuits: [{ ...RV50, breaker: breaker([1, 3], "50 A") }] },
        },
      ];
    });
    const circuit = outletCircuit(made, made.circuits[0]!);
    expect(circuit.run.hot1).toBeCloseTo(0.0692, 8);
    expect(circuit.feet).toBe(200);
  });
});

describe("the table of faults", () => {
  const made = designed([RV50]);
  const test = acceptanceTest(made, made.circuits[0]!);
  const rows = faultTable(test.circuit, test.loaded[0]!.load);
  const row = (id: string) => rows.find((r) => r.id === id)!;
  it("idle readings first; each says what to do and what to stop", () => {
    const order = ["idle", "loaded", "low-impedance", "nothing"];
    const places = rows.map((r) => order.indexOf(r.shows));
    expect(places).toEqual([...places].sort());
    for (const r of rows) expect([r.toDo, r.stop, r.likely, r.provedBy].every((words) => words.length > 3)).toBe(true);
    for (const r of rows) expect(r.outOfBand.length === 0).toBe(r.shows === "nothing");
  });
  it("both hots on one leg: 0 V between them, idle (http://rvtravel.com/how-do-you-know-when-you-have-a-miswired-power-pedestal/)", () => {
    expect([row("both-hots-one-leg").shows, row("both-hots-one-leg").outOfBand]).toEqual(["idle", ["L1-L2"]]);
    expect(row("both-hots-one-leg").reads["L1-L2"]).toBeLessThan(1);
  });
  it("an open neutral feeds 240 V to the unloaded leg once the other is loaded (series circuit across 240 V)", () => {
    expect(row("open-neutral").shows).toBe("loaded");
    expect(row("open-neutral").reads["L2-N"]).toBeGreaterThan(225);
  });
  it("an open equipment ground at four wires reads right on a 10 MΩ meter and not on a low-impedance one (phantom volts: http://ask-the-electrician.com/why-do-i-have-lower-voltage-readings/)", () => {
    expect(row("open-equipment-ground").shows).toBe("low-impedance");
    expect(row("open-equipment-ground").reads["L1-G"]).toBeLessThan(5);
  });
});

describe("entries", () => {
  const made = designed([{ ...RV50, serves: "rv-30", current: "30 A", breaker: breaker([5], "30 A") }]);
  const circuit = made.circuits[0]!;
  const entered = (text: string) => {
    const read = readReadings(`format: branchwork-readings/1\n${text}`);
    if (!read.ok) throw new Error(JSON.stringify(read.issues));
    return read.readings;
  };
  it("volts with and without their unit are the same", () => expect(entered("idle: { L1-N: 122 V, L1-G: 122 }").idle).toEqual({ "L1-N": 122, "L1-G": 122 }));
  it("a reading the wiring lacks is a wrong entry, not a fault", () => {
    expect(entryProblems(circuit, entered("idle: { L1-L2: 240 }")).map((p) => p.path)).toEqual(["idle.L1-L2"]);
    expect(entryProblems(circuit, entered("idle: { L1-N: 120 }\nloaded: { across: L1-G, amperes: 5, readings: {} }")).map((p) => p.path)).toEqual([
      "loaded.across",
    ]);
    expect(entryProblems(circuit, entered("idle: { L1-N: 120 }"))).toEqual([]);
  });
  it("in band and complete passes; a blank does not", () => {
    expect(diagnoseOutlet(made, circuit, entered("idle: { L1-N: 122, L1-G: 122, N-G: 0 }")).verdict).toBe("pass");
    expect(diagnoseOutlet(made, circuit, entered("idle: { L1-N: 122, N-G: 0 }")).verdict).toBe("need-more");
  });
  it.each([
    "",
    "idle: [",
    "idle: { L1-N: -1 }",
    "idle: { L1-N: .nan }",
    "idle: &a { L1-N: 1 }\nloaded: *a",
    "idle: { L1-N: 120, L1-N: 121 }",
    "idle: { __proto__: 1 }",
  ])("%j gives issues with a line, and throws nothing", (text) => {
    const read = readReadings(`format: branchwork-readings/1\n${text}`);
    expect(read.ok).toBe(false);
    if (!read.ok) for (const issue of read.issues) expect(issue.line).toBeGreaterThan(0);
  });
});

describe("what may run at an outlet", () => {
  it("its volts are the supply less the drop of the worst leg: 50 A through 2 × 0.0491 Ω is 4.91 V at most (Ohm's law, Table 8)", () => {
    const made = designed([RV50]);
    const use = outletUse(made, made.circuits[0]!)!;
    const drop = 120 - Number(use.volts.value);
    expect(drop).toBeGreaterThan(4.3);
    expect(drop).toBeLessThanOrEqual(5);
    for (const { sets } of use.hookups) for (const { legs } of sets) for (const leg of legs) expect(Number(leg.demand.value)).toBeLessThanOrEqual(leg.limit);
  });
  it("nothing is said of an outlet that feeds no vehicle", () => {
    const made = designed([{ ...RV50, serves: "ev-supply", current: "32 A", breaker: breaker([5, 7], "40 A") }]);
    expect(outletUse(made, made.circuits[0]!)).toBeNull();
  });
});

describe("changes between two designs", () => {
  it("none between a job and itself", () => expect(changesBetween(designed([RV50]), designed([RV50]))).toEqual([]));
  it("an entry, the values it moves and the findings it turns", () => {
    const changes = changesBetween(designed([RV50]), designed([{ ...RV50, breaker: { ...RV50.breaker, gfci: false } }]));
    expect(changes.filter((c) => c.kind === "input")).toEqual([
      { kind: "input", id: "service.panel.circuits[c].breaker.gfci", says: "service.panel.circuits[c].breaker.gfci", was: "true", now: "false" },
    ]);
    expect(changes.find((c) => c.id.startsWith("gfci:"))?.now).toMatch(/^fail/);
  });
  it("one more circuit moves no other's path", () => {
    const more = { ...RV50, id: "new", name: "New", breaker: breaker([9, 11], "50 A") };
    const inputs = changesBetween(designed([RV50]), designed([more, RV50])).filter((c) => c.kind === "input");
    expect(inputs.length).toBeGreaterThan(0);
    for (const { id, was } of inputs) expect([id.includes("circuits[new]"), was]).toEqual([true, null]);
  });
});

describe("every committed job", () => {
  const folder = new URL("../../../fixtures/jobs/", import.meta.url);
  it.each(readdirSync(folder).filter((name) => name.endsWith(".yaml")))("%s: checklist, bands and limits are worked", (name) => {
    const read = readJob(readFileSync(new URL(name, folder), "utf8"));
    if (!read.ok) throw new Error(JSON.stringify(read.issues));
    const made = design({ job: read.job });
    expect(inspectionChecklist(made).length).toBeGreaterThan(0);
    for (const circuit of made.circuits) {
      for (const band of acceptanceTest(made, circuit).idle) expect(Number.isFinite(band.simulated)).toBe(true);
      outletUse(made, circuit);
    }
  });
});
