import { describe, expect, it } from "vitest";
import { decimal } from "../src/quantity.js";
import { faultBehind } from "../src/service/fault-current.js";
import { type FaultSource, sourceImpedance } from "../src/service/fault-source.js";
import { leastByRating, statedLeast } from "../src/service/least-source.js";
import { serviceFault } from "../src/service/service-fault.js";
import { plainJob } from "./plain-job.js";
import { readWritten } from "./read-written.js";

// What stands in the printed lines of a fault's source; the figures themselves are proved by fault.test.ts and by simulation.
const edition = "2023";
const ONE = {
  id: "c",
  name: "C",
  serves: "rv-50",
  current: "50 A",
  breaker: { poles: 2, spaces: [1, 3], gfci: true },
  route: [{ name: "way", place: "indoors", method: "EMT", length: "10 ft" }],
};
const fifty = { kind: "transformer", kVA: 50, percentZ: 2 } as const;
const X_OVER_R = "taken as 1.5 where none is given";
const HALF = "line to neutral: R × 1.5 / 4, X × 1.2 / 4";

function of(source: FaultSource, through: "lines" | "neutral" = "lines") {
  const { steps } = sourceImpedance({ id: "s", source, volts: 240, through });
  return { steps, written: steps.map(({ id, expression }) => `${id}: ${expression}`), cites: steps.at(-1)!.citations.map(({ section }) => section) };
}

describe("the source as written", () => {
  it("a utility's figure, line to line: its X/R taken, and told as taken", () => {
    const { steps, written, cites } = of({ kind: "utility", amperes: 10000 });
    expect(written).toEqual(["s.ohms: 240 V / 10,000 A", "s.resistance: 0.024 Ω / √(1 + 1.5 × 1.5)", "s.reactance: 0.024 Ω × 1.5 / √(1 + 1.5 × 1.5)"]);
    expect(steps.map(({ label }) => label)).toEqual([
      "Source impedance, from the utility's figure",
      "Source resistance, line to line",
      "Source reactance, line to line",
    ]);
    expect(steps.map(({ inputs }) => inputs)).toEqual([[], ["s.ohms"], ["s.ohms"]]);
    expect(cites).toEqual([X_OVER_R]);
  });
  it("an X/R of its own is not told as taken", () => expect(of({ kind: "utility", amperes: 10000, xOverR: 2 }).cites).toEqual([]));
  it("through the neutral of half a winding, where the utility says nothing of it", () => {
    const { written, cites, steps } = of({ kind: "utility", amperes: 10000 }, "neutral");
    expect(written.slice(1)).toEqual(["s.resistance: 0.024 Ω / √(1 + 1.5 × 1.5) × 0.375", "s.reactance: 0.024 Ω × 1.5 / √(1 + 1.5 × 1.5) × 0.3"]);
    expect(cites).toEqual([X_OVER_R, HALF]);
    expect(steps[1]?.label).toBe("Source resistance, line to neutral");
  });
  it("a figure to neutral of its own, by 120 V and without a half", () => {
    const { written, cites } = of({ kind: "utility", amperes: 10000, lineToNeutralAmperes: 12500, xOverR: 1 }, "neutral");
    expect(written.slice(0, 2)).toEqual(["s.ohms: 120 V / 12,500 A", "s.resistance: 0.0096 Ω / √(1 + 1 × 1)"]);
    expect(cites).toEqual([]);
    expect(of({ kind: "utility", amperes: 10000, lineToNeutralAmperes: 12500 }).written[0]).toBe("s.ohms: 240 V / 10,000 A");
  });
  it("a transformer by its nameplate, with its tolerance either way", () => {
    const ohms = (more: object) => of({ ...fifty, ...more }).written[0];
    const plate = "s.ohms: 240 V × 240 V / (50 × 1,000 VA) × 2 / 100";
    expect([ohms({}), ohms({ tolerancePercent: 0 }), ohms({ tolerancePercent: 10 }), ohms({ tolerancePercent: -10 })]).toEqual([
      plate,
      plate,
      `${plate} × 0.9`,
      `${plate} × 1.1`,
    ]);
  });
  it("what is ahead of it, taken or given: a part of its own with its own X/R", () => {
    const taken = of({ ...fifty, xOverR: 2, primaryPercent: 1 });
    expect(taken.written).toEqual([
      "s.ohms: 240 V × 240 V / (50 × 1,000 VA) × 2 / 100",
      "s.primary: 240 V × 240 V / (50 × 1,000 VA) × 1 / 100",
      "s.resistance: 0.02304 Ω / √(1 + 2 × 2) + 0.01152 Ω / √(1 + 1.5 × 1.5)",
      "s.reactance: 0.02304 Ω × 2 / √(1 + 2 × 2) + 0.01152 Ω × 1.5 / √(1 + 1.5 × 1.5)",
    ]);
    expect([taken.cites, taken.steps[2]?.inputs]).toEqual([[X_OVER_R], ["s.ohms", "s.primary"]]);
    const given = of({ ...fifty, xOverR: 2, primary: { amperes: 2000, volts: 7200, xOverR: 3 } }, "neutral");
    expect(given.written.slice(1, 3)).toEqual([
      "s.primary: 240 V × 240 V / 7,200 V / 2,000 A",
      "s.resistance: 0.02304 Ω / √(1 + 2 × 2) × 0.375 + 0.004 Ω / √(1 + 3 × 3) × 0.25",
    ]);
    expect(given.cites).toEqual([HALF]);
    expect(of({ ...fifty, xOverR: 2, primary: { amperes: 2000, volts: 7200 } }).cites).toEqual([X_OVER_R]);
    expect(of(fifty).steps).toHaveLength(3);
  });
});

const fault = (given: object | undefined, service: object = {}) =>
  serviceFault(readWritten(plainJob({ service: { ...(given === undefined ? {} : { fault: given }), ...service }, panel: { circuits: [ONE] } })), edition);
const says = (given: object) => fault(given)?.assumptions.map((one) => one.says) ?? [];

describe("the least source", () => {
  const level = (amperes: number) =>
    faultBehind({
      id: "g",
      at: "p",
      path: "line-to-ground",
      impedance: { r: decimal(120).div(amperes), x: decimal(0) },
      volts: decimal(120),
      steps: [],
      edition,
    });
  it("by the rating: 24 V / 200 A is 0.12 Ω, 1,000 A; never above the greatest known", () => {
    const weak = leastByRating(200, level(5000), edition);
    expect(weak.level.steps.map(({ expression, value }) => `${expression} = ${value}`)).toEqual([
      "2 × 12 V / 200 A = 0.12",
      "0.12 Ω = 0.12",
      "0 Ω = 0",
      "√(0.12 × 0.12 + 0 × 0) = 0.12",
      "120 V / 0.12 Ω = 1000",
    ]);
    const greatest = level(900);
    expect(leastByRating(200, greatest, edition).level).toBe(greatest);
    expect(leastByRating(200, level(1000), edition).level.at).toBe("the service panel");
    expect(weak.assumptions[0]?.says).toContain("1,000 A taken to ground");
  });
  const stated = (given: object) => statedLeast(readWritten(plainJob({ service: { fault: given }, panel: { circuits: [ONE] } })), edition);
  it("by the meter and by the utility, as written", () => {
    expect(stated({ loop_ohms: 0.08 })?.level.steps[0]).toMatchObject({ expression: "0.08 Ω", label: "Loop impedance at the service panel, by the meter" });
    expect(stated({ loop_ohms: 0.08 })?.basis).toBe("meter");
    expect(stated({ least_kA: 2.5 })?.level.steps[0]).toMatchObject({
      expression: "120 V / 2,500 A",
      value: "0.048",
      label: "Loop impedance at the service panel, from the utility's least figure",
    });
    expect([stated({ least_kA: 2.5 })?.basis, stated({ least_kA: 2.5 })?.level.amperes.value]).toEqual(["utility", "2500"]);
    expect(stated({ utility: { kA: 10 } })).toBeNull();
    const cited = (given: object) => stated(given)?.level.steps.map(({ citations }) => citations.map(({ section }) => section).join());
    const taken = "taken whole as resistance, which adds most to that of the conductors";
    expect(cited({ loop_ohms: 0.08 })?.slice(0, 3)).toEqual(["hot to neutral at the service panel, as entered", taken, taken]);
    expect(cited({ least_kA: 2.5 })?.slice(0, 3)).toEqual(["least available fault current as stated", taken, taken]);
    const whole = { path: "service.fault", says: "impedance of the source in a ground fault taken whole as resistance, which adds most to the conductors'" };
    expect([stated({ loop_ohms: 0.08 })?.assumptions, stated({ least_kA: 2.5 })?.assumptions]).toEqual([[whole], [whole]]);
  });
  it("each line names the one before it", () =>
    expect(stated({ loop_ohms: 0.08 })?.level.steps.map(({ inputs }) => inputs.map((id) => id.split(".").at(-1)))).toEqual([
      [],
      ["ohms"],
      ["ohms"],
      ["resistance", "reactance"],
      ["total"],
    ]));
});

describe("the fault at the service", () => {
  const RATIO = "X/R of the source taken as 1.5 (common practice, no source)";
  const NEUTRAL = "the utility's fault current taken as the greatest at the service panel, line to line and to neutral";
  it("nobody gave one", () => expect(fault(undefined)).toBeNull());
  it("what is taken of a utility's figure, and what is not where it is given", () => {
    expect(says({ utility: { kA: 10 } }).slice(0, 2)).toEqual([NEUTRAL, RATIO]);
    expect(says({ utility: { kA: 10, x_over_r: 2 } })).toHaveLength(2);
    expect(says({ utility: { kA: 10, x_over_r: 2 } })).not.toContain(RATIO);
    expect(says({ utility: { kA: 10, line_to_neutral_kA: 12 } })).not.toContain(NEUTRAL);
  });
  it("of a transformer: its tolerance both ways, its X/R", () => {
    const told = says({ transformer: { kva: 50, percent_z: 2 } });
    expect(told).toHaveLength(3);
    expect(told.map((one) => /tenth less|tenth more|X\/R/.exec(one)?.[0])).toEqual(["tenth less", "X/R", "tenth more"]);
    expect(says({ transformer: { kva: 50, percent_z: 2, x_over_r: 2 } })).toHaveLength(2);
  });
  it("at the transformer itself where nothing runs from it; beyond its conductors else, cold for the greatest and warm for the least", () => {
    const bare = fault({ transformer: { kva: 50, percent_z: 2, x_over_r: 2 } })!;
    expect([bare.point.lineToLine?.at, bare.leastBasis]).toEqual(["the source", "transformer"]);
    // A tenth less impedance is 10/9 of the current.
    expect(Number(bare.point.lineToLine?.amperes.value)).toBeCloseTo(((50000 / 240 / 0.02) * 10) / 9, 4);
    const conductors = [{ size: "4/0", length: "80 ft" }];
    const beyond = fault({ transformer: { kva: 50, percent_z: 2, x_over_r: 2, conductors } })!;
    expect([beyond.point.lineToLine?.at, beyond.point.loop?.at]).toEqual(["the service panel", "the service panel"]);
    const shown = (id: string) => beyond.steps.find((step) => step.id === id)?.expression;
    // Table 9: 4/0 aluminum in PVC 0.1 Ω / 1000 ft.
    expect(shown("service.fault.line-to-line.resistance")).toBe("2 × 0.1 Ω / 1000 ft × (1 + 0.00330 × (25 − 75)) × 80 ft");
    expect(shown("service.fault.loop.resistance")).toBe("2 × 0.1 Ω / 1000 ft × 80 ft");
    expect(beyond.steps.filter(({ id }) => id.endsWith(".ohms")).map(({ id }) => id)).toEqual([
      "service.fault.line-to-line.source.ohms",
      "service.fault.line-to-neutral.source.ohms",
      "service.fault.loop.source.ohms",
    ]);
  });
  it("a neutral of the hots' size where none is given", () => {
    const shown = (more: object) =>
      fault({ transformer: { kva: 50, percent_z: 2, conductors: [{ size: "4/0", length: "80 ft", ...more }] } })?.steps.find(
        ({ id }) => id === "service.fault.loop.resistance",
      )?.expression;
    expect(shown({ neutral: "2/0" })).toBe("0.1 Ω / 1000 ft × 80 ft + 0.16 Ω / 1000 ft × 80 ft");
    expect(shown({ sets: 2 })).toBe("2 × 0.1 Ω / 1000 ft × 80 ft / 2");
  });
  it("a reading of the loop alone leaves the greatest open", () => {
    const only = fault({ loop_ohms: 0.08 })!;
    expect([only.point.lineToLine, only.point.lineToNeutral, only.leastBasis, only.assumptions.length]).toEqual([null, null, "meter", 1]);
    expect(only.steps).toEqual(only.point.loop?.steps);
  });
  it("the old field is the utility's figure", () => {
    const old = fault(undefined, { fault_current_kA: 10 })!;
    expect([old.point.lineToLine?.amperes.value, old.leastBasis]).toEqual(["10000", "bound"]);
  });
});
