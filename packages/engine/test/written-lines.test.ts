import { describe, expect, it } from "vitest";
import { decimal } from "../src/quantity.js";
import { fixedApplianceDemand } from "../src/service/fixed-appliances.js";
import { lightingDemand } from "../src/service/lighting-demand.js";
import { noncoincidentLoad } from "../src/service/noncoincident.js";
import { type ConductorRun, loopImpedance } from "../src/sizing/impedance.js";
import { multiplied, pullingTension } from "../src/sizing/pulling-tension.js";

// What stands in the printed lines, worked by hand from the rules that load-edges and raceway already cite.
const id = "x";
const edition = "2023";

describe("loads not used together, as written", () => {
  const heating = (va: number, motorVA = 0) => ({ name: "heating", va, motor: false, motorVA });
  const cooling = (va: number) => ({ name: "cooling", va, motor: true });

  it("one alone is not compared", () => expect(noncoincidentLoad({ id, loads: [heating(5000)], edition }).total.expression).toBe("5,000 VA"));
  it("of two alike the first counts", () => {
    expect(noncoincidentLoad({ id, loads: [heating(5000), cooling(5000)], edition: "2017" }).counted!.name).toBe("heating");
    // 4,000 × 1.25 = 5,000: what is larger itself counts.
    expect(noncoincidentLoad({ id, loads: [cooling(4000), heating(5000)], edition }).counted!.name).toBe("heating");
  });
  it("the largest motor is not passed by a lesser one with an increase: 6,000 × 1.25 and not 5,000 × 1.25", () => {
    const { counted, total, motorIncreased } = noncoincidentLoad({ id, loads: [heating(5000, 5000), cooling(6000)], edition });
    expect([counted?.name, total.value, total.expression, motorIncreased]).toEqual(["cooling", "7500", "max(5,000 VA × 1.25; 6,000 VA × 1.25)", true]);
    // 4,800 × 1.25 = 6,000 does not pass it: its quarter stands with the largest motor of the house.
    const just = noncoincidentLoad({ id, loads: [heating(4800, 4800), cooling(6000)], edition });
    expect([just.total.value, just.total.expression, just.motorIncreased]).toEqual(["6000", "max(4,800 VA × 1.25; 6,000 VA)", false]);
    // Another motor of 5,500 outside: 6,000 + 0.25 × 500, and the quarter of 5,500 elsewhere.
    const outside = noncoincidentLoad({ id, loads: [heating(6000, 5600), cooling(6000)], otherMotorVA: 5500, edition });
    expect([outside.counted?.name, outside.total.value]).toEqual(["cooling", "6125"]);
    expect(noncoincidentLoad({ id, loads: [heating(5000, 5000), cooling(6000)], edition: "2017" }).total.value).toBe("6000");
  });
  it("the larger has no increase, wherever it stands", () =>
    expect(noncoincidentLoad({ id, loads: [heating(4000), cooling(5000)], edition }).total.value).toBe("5000"));
  it("a motor as large as another outside is not increased", () => {
    const { motorIncreased, total } = noncoincidentLoad({ id, loads: [heating(6000, 3000)], otherMotorVA: 3000, edition });
    expect([motorIncreased, total.expression]).toEqual([false, "6,000 VA"]);
  });
  it("the increase is written whole, over another motor and of a part", () => {
    const written = (loads: Parameters<typeof noncoincidentLoad>[0]["loads"], otherMotorVA = 0) =>
      noncoincidentLoad({ id, loads, otherMotorVA, edition }).total.expression;
    expect(written([heating(5000), cooling(4900)])).toBe("max(5,000 VA; 4,900 VA × 1.25)");
    expect(written([heating(5000), cooling(4900)], 900)).toBe("max(5,000 VA; 4,900 VA + 0.25 × (4,900 VA - 900 VA))");
    expect(written([heating(5000, 3000)])).toBe("5,000 VA + 0.25 × (3,000 VA - 0 VA)");
  });
});

describe("demand by parts, as written", () => {
  it("lighting: only the parts there are, each named by its band", () => {
    const lines = (connectedVA: string) => lightingDemand({ id, connectedVA, edition }).steps.map(({ label, value }) => `${label}: ${value}`);
    expect(lines("3000")).toEqual(["First 3,000 VA whole: 3000", "General lighting after demand factors: 3000"]);
    expect(lines("130000")).toEqual([
      "First 3,000 VA whole: 3000",
      "Part over 3,000 VA at 35 %: 40950",
      "Part over 120,000 VA at 25 %: 2500",
      "General lighting after demand factors: 46450",
    ]);
  });
  it("appliances: four of just 500 VA count (memory); a line for each part there is", () => {
    const lines = (...ratings: number[]) =>
      fixedApplianceDemand({ id, appliances: ratings.map((va, i) => ({ name: `${i}`, va })), edition }).steps.map(({ id: line, value }) => `${line} ${value}`);
    expect(lines(500, 500, 500, 500)).toEqual(["x.appliances-75 1500", "x.appliances 1500"]);
    expect(lines(500, 500, 500, 500, 499)).toEqual(["x.appliances-whole 499", "x.appliances-75 1500", "x.appliances 1999"]);
    expect(lines()).toEqual(["x.appliances-whole 0", "x.appliances 0"]);
  });
});

describe("a loop of unlike conductors", () => {
  const run: ConductorRun = { size: "6", material: "copper", conduit: "PVC", feet: 100, celsius: 75, parallel: 1 };
  const ohms = (...runs: ConductorRun[]) => {
    const { resistance, reactance } = loopImpedance({ id, label: "Loop", runs, edition })!;
    return [resistance, reactance] as const;
  };
  it.each([{ conduit: "steel" }, { feet: 50 }, { celsius: 25 }, { parallel: 2 }, { size: "4" }] as const)(
    "the way back with %o is read for itself",
    (other) => {
      const back: ConductorRun = { ...run, ...other };
      for (const axis of [0, 1] as const)
        expect(decimal(ohms(run, back)[axis].value).toNumber()).toBeCloseTo(Number(ohms(run)[axis].value) + Number(ohms(back)[axis].value), 15);
    },
  );
  it("the note on temperature stands at the resistance alone, where any conductor is not at 75 °C", () => {
    const noted = (...runs: ConductorRun[]) => ohms(...runs).map(({ citations }) => citations.some(({ section }) => section.includes("T2")));
    expect(noted(run, run)).toEqual([false, false]);
    expect(noted(run, { ...run, celsius: 25 })).toEqual([true, false]);
  });
});

describe("a pull, as written", () => {
  const bend = { kind: "bend", degrees: 90, radiusIn: 8 } as const;
  const straight = { kind: "straight", feet: 100 } as const;
  const pull = (...parts: Parameters<typeof pullingTension>[0]["parts"]) => pullingTension({ id, parts, weight: "0.5", friction: "0.5" });

  it("each line rests on the one before it, a pressure on its bend", () => {
    const { steps, sidewalls } = pull(straight, bend, straight);
    expect(steps.map(({ inputs }) => inputs)).toEqual([[], ["x.1"], ["x.2"]]);
    expect(sidewalls.map((line) => [line.id, line.inputs])).toEqual([["x.2.sidewall", ["x.2"]]]);
  });
  it("nothing to pull through, a bend of no radius: not a pull", () => {
    expect(() => pull()).toThrow("at least one part");
    expect(() => pull({ ...bend, radiusIn: 0 })).toThrow("has a radius");
  });
  it("eight digits are right where doubles cannot tell which way to round, and past the largest double", () => {
    const none = decimal(0);
    expect(multiplied(decimal("1.00000005"), none).toFixed()).toBe("1.0000001");
    expect(multiplied(decimal("1.0000000499999999999"), none).toFixed()).toBe("1");
    expect(multiplied(decimal("1.00000004999999999999"), none).toFixed()).toBe("1");
    expect(multiplied(none, none).toFixed()).toBe("0");
    // e^800 = 2.726374572… × 10^347, by Python's decimal module at 40 digits.
    expect(multiplied(decimal("1e300"), decimal(800)).toExponential()).toBe("2.7263746e+647");
  });
});
