import fc from "fast-check";
import { abs, add, type Complex, complex } from "mathjs";
import { describe, expect, it } from "vitest";
import { FAULT_PATHS, type FaultSegment, faultCurrents } from "../src/service/fault-current.js";
import { faultLoop } from "../src/service/fault-loop.js";
import type { FaultSource } from "../src/service/fault-source.js";
import { interruptingMargin } from "../src/service/interrupting.js";
import { readCell } from "../src/tables/code-table.js";
import { AC_IMPEDANCE, CONDUIT_MATERIALS, impedanceColumns } from "../src/tables/impedance.js";
import type { Size } from "../src/tables/size.js";
import { redo } from "./redo.js";

const edition = "2023" as const;
const near = (actual: string | number, expected: number, tolerance: number) => expect(Math.abs(Number(actual) - expected)).toBeLessThanOrEqual(tolerance);
const base = { id: "f", volts: 240, edition } as const;
const fifty: FaultSource = { kind: "transformer", kVA: 50, percentZ: 2, xOverR: 1.5 };
const service: FaultSegment = {
  name: "service",
  material: "aluminum",
  conduit: "PVC",
  feet: 80,
  celsius: 25,
  hot: "4/0",
  neutral: "2/0",
  grounding: null,
  supplySide: true,
};
const branch: FaultSegment = {
  name: "outlet",
  material: "copper",
  conduit: "PVC",
  feet: 100,
  celsius: 25,
  hot: "6",
  neutral: "6",
  grounding: { size: "10", material: "copper" },
  supplySide: false,
};

describe("published fault currents", () => {
  const published = { ...base, source: { kind: "transformer", kVA: 300, percentZ: 3, tolerancePercent: 10 }, segments: [] } as const;
  it("300 kVA, 240 V single phase, 3 % less a tenth: 46,296 A line to line (available fault current worksheet, https://www.scribd.com/document/230809087/FaultV6-2-1)", () =>
    near(faultCurrents({ ...published, path: "line-to-line" })![0]!.amperes.value, 46296, 1));
  it("the same worksheet's line-to-neutral figure, 1.5 times as much at the terminals, within 5 %", () =>
    near(faultCurrents({ ...published, path: "line-to-neutral" })![0]!.amperes.value, 1.5 * 46296, 0.05 * 1.5 * 46296));
  it("resistances and reactances summed apart: 32,493.029 A at the end of 2 sets of 300 kcmil in steel (https://www.scribd.com/document/824089714/SHORT-CIRCUIT-CALCULATION)", () => {
    // Printed: network and transformer 0.0000526 + 0.001318 Ω and 0.0005264 + 0.003690 Ω at 230 V, then 25 m with 305 m to the 1000 ft.
    // The printed path counts one way, ours out and back: half the length. The cable before it is not in this sum, as printed.
    const [r, x] = [0.0000526 + 0.001318, 0.0005264 + 0.00369];
    const run = { ...branch, hot: "300", conduit: "steel", celsius: 75, parallel: 2, feet: ((25 / 305) * 1000) / 2 } as const;
    const found = faultCurrents({
      ...base,
      volts: 230,
      source: { kind: "utility", amperes: 230 / Math.hypot(r, x), xOverR: x / r },
      segments: [run],
      path: "line-to-line",
    })!;
    near(found[1]!.amperes.value, 32493.029, 20);
  });
});

describe("the source", () => {
  it("a utility's figure comes back as given at the source, line to line and to neutral", () => {
    const source = { kind: "utility", amperes: 10000, lineToNeutralAmperes: 12500, xOverR: 2 } as const;
    near(faultCurrents({ ...base, source, segments: [], path: "line-to-line" })![0]!.amperes.value, 10000, 1e-9);
    near(faultCurrents({ ...base, source, segments: [], path: "line-to-ground" })![0]!.amperes.value, 12500, 1e-9);
  });
  it("an infinite primary gives the most; a real one adds in the same angle: V / (Zt + V² / (Vp Ip))", () => {
    const primary = { amperes: 2000, volts: 7200, xOverR: 1.5 };
    const [infinite, real] = [fifty, { ...fifty, primary }].map((source) =>
      Number(faultCurrents({ ...base, source, segments: [], path: "line-to-line" })![0]!.amperes.value),
    );
    // To ten digits.
    near(infinite!, 50000 / 240 / 0.02, 1e-5);
    near(real!, 240 / ((240 * 240 * 0.02) / 50000 + (240 * 240) / (7200 * 2000)), 1e-5);
  });
  it("says when X/R is assumed, and as what", () => {
    const steps = faultCurrents({ ...base, source: { kind: "utility", amperes: 10000 }, segments: [], path: "line-to-line" })![0]!.steps;
    expect(steps.flatMap((s) => s.citations).some((c) => c.standing === "practice" && c.section.includes("1.5"))).toBe(true);
  });
});

describe("paths", () => {
  it("a ground fault ahead of the main bonding jumper returns in the neutral, after it in the grounding conductor", () => {
    const [neutral, ground] = (["line-to-neutral", "line-to-ground"] as const).map(
      (path) => faultCurrents({ ...base, source: fifty, segments: [service, branch], path })!,
    );
    expect(ground![1]!.amperes.value).toBe(neutral![1]!.amperes.value);
    expect(Number(ground![2]!.amperes.value)).toBeLessThan(Number(neutral![2]!.amperes.value));
  });
  it.each([
    ["line-to-neutral", { ...branch, neutral: null }],
    ["line-to-ground", { ...branch, grounding: null }],
    ["line-to-line", { ...branch, hot: "700" }],
  ] as const)("%s has no answer without its conductor", (path, segment) =>
    expect(faultCurrents({ ...base, source: fifty, segments: [segment], path })).toBeNull(),
  );
});

/** The same by floats and complex arithmetic from the printed table figures. */
function again(segments: readonly FaultSegment[], ground: boolean): number {
  const one = (s: FaultSegment, size: Size, material: "copper" | "aluminum", sets: number): Complex => {
    const at = impedanceColumns(material, s.conduit);
    const factor = 1 + (material === "copper" ? 0.00323 : 0.0033) * (Number(s.celsius) - 75);
    const ways = Number(s.feet) / 1000 / sets;
    const [r, x] = [at.r, at.x].map((column) => Number(readCell(AC_IMPEDANCE, size, column, edition)!.value) * ways);
    return complex(r! * factor, x!);
  };
  const source = (240 * 240 * 0.02) / 50000 / Math.hypot(1, 1.5);
  let z = ground ? complex(source * 0.375, source * 1.5 * 0.3) : complex(source, source * 1.5);
  for (const s of segments) {
    const sets = s.parallel ?? 1;
    const back = ground ? one(s, s.grounding!.size, s.grounding!.material, s.grounding!.parallel ?? sets) : one(s, s.hot, s.material, sets);
    z = add(add(z, one(s, s.hot, s.material, sets)), back) as Complex;
  }
  return (ground ? 120 : 240) / (abs(z) as unknown as number);
}

const segment = fc.record({
  name: fc.constant("s"),
  material: fc.constantFrom("copper" as const, "aluminum" as const),
  conduit: fc.constantFrom(...CONDUIT_MATERIALS),
  feet: fc.integer({ min: 0, max: 400 }),
  celsius: fc.integer({ min: -20, max: 90 }),
  parallel: fc.integer({ min: 1, max: 3 }),
  hot: fc.constantFrom<Size>("10", "6", "2", "1/0", "4/0", "500"),
  neutral: fc.constantFrom<Size>("10", "6", "2", "1/0"),
  grounding: fc.record({ size: fc.constantFrom<Size>("12", "10", "6"), material: fc.constantFrom("copper" as const, "aluminum" as const) }),
  supplySide: fc.constant(false),
}) as fc.Arbitrary<FaultSegment>;
const chain = fc.array(segment, { minLength: 1, maxLength: 4 });

describe("whatever the chain", () => {
  it("agrees with complex arithmetic within a part in 1e9", () =>
    fc.assert(
      fc.property(chain, (segments) => {
        for (const path of ["line-to-line", "line-to-ground"] as const) {
          const expected = again(segments, path === "line-to-ground");
          near(faultCurrents({ ...base, source: fifty, segments, path })!.at(-1)!.amperes.value, expected, expected * 1e-9);
        }
      }),
    ));
  it("current never rises along it, nor when it is longer or hotter", () =>
    fc.assert(
      fc.property(chain, fc.integer({ min: 0, max: 100 }), fc.integer({ min: 0, max: 40 }), (segments, feet, degrees) => {
        for (const path of FAULT_PATHS) {
          const at = (list: readonly FaultSegment[]) => faultCurrents({ ...base, source: fifty, segments: list, path })!.map((l) => Number(l.amperes.value));
          const along = at(segments);
          along.reduce((before, after) => {
            expect(after).toBeLessThanOrEqual(before + 1e-9);
            return after;
          });
          const longer = at(segments.map((s) => ({ ...s, feet: Number(s.feet) + feet })));
          const hotter = at(segments.map((s) => ({ ...s, celsius: Number(s.celsius) + degrees })));
          expect(longer.at(-1)!).toBeLessThanOrEqual(along.at(-1)! + 1e-9);
          expect(hotter.at(-1)!).toBeLessThanOrEqual(along.at(-1)! + 1e-9);
        }
      }),
    ));
  it("every line printed, redone by an independent evaluator, gives its value, and every input named is a line before it", () =>
    fc.assert(
      fc.property(chain, (segments) => {
        for (const path of FAULT_PATHS) {
          const seen = new Set<string>();
          for (const level of faultCurrents({ ...base, source: fifty, segments, path })!)
            for (const step of level.steps) {
              near(redo(step.expression), Number(step.value), Math.max(2e-7, Number(step.value) * 0.001));
              for (const input of step.inputs) expect(seen).toContain(input);
              seen.add(step.id);
            }
        }
      }),
    ));
});

describe("interrupting rating, 110.9", () => {
  const available = (amperes: number) => faultCurrents({ ...base, source: { kind: "utility", amperes }, segments: [], path: "line-to-line" })![0]!.amperes;
  it.each([
    [9999, true],
    [10000, true],
    [10001, false],
  ])("10 kA with %d A available: %s", (amperes, serves) => {
    const found = interruptingMargin({ id: "i", available: available(amperes), ratedKA: 10, edition });
    expect(found.serves).toBe(serves);
    near(found.margin.value, 10 - amperes / 1000, 1e-9);
  });
});

describe("ground-fault loop, 250.4(A)(5)", () => {
  // A source of 120 V behind 0.2 Ω, no run: 600 A.
  const bare = { ...base, source: { kind: "utility", amperes: 600, lineToNeutralAmperes: 600, xOverR: 1 }, segments: [] } as const;
  it.each([
    [60, "at-once", "10"],
    [61, "may-delay", "9.83606557377049"],
    [120, "may-delay", "5"],
    [121, "delayed", "4.95867768595041"],
  ] as const)("600 A through a %d A breaker: %s at 5 and 10 times (common practice, no source)", (breaker, result, multiple) => {
    const found = faultLoop({ ...bare, breaker })!;
    expect(found.result).toBe(result);
    near(found.multiple.value, Number(multiple), 1e-9);
  });
  it("takes the maker's multiple in place of practice, and then does not cite practice", () => {
    const found = faultLoop({ ...bare, breaker: 50, tripMultiples: [13] })!;
    expect(found.result).toBe("delayed");
    expect(found.trips.map((t) => [t.multiple, t.amperes.value, t.reached])).toEqual([["13", "650", false]]);
    expect(found.trips[0]!.amperes.citations).toEqual([]);
  });
  it("the outlet's loop is the ground-fault path's last point, and warmer conductors carry less", () => {
    const cold = faultLoop({ ...base, source: fifty, segments: [service, branch], breaker: 50 })!;
    const warm = faultLoop({ ...base, source: fifty, segments: [service, branch].map((s) => ({ ...s, celsius: 75 })), breaker: 50 })!;
    expect(cold.loop.amperes.value).toBe(faultCurrents({ ...base, source: fifty, segments: [service, branch], path: "line-to-ground" })!.at(-1)!.amperes.value);
    expect(Number(warm.multiple.value)).toBeLessThan(Number(cold.multiple.value));
  });
  it("no grounding conductor, no loop", () =>
    expect(faultLoop({ ...base, source: fifty, segments: [{ ...branch, grounding: null }], breaker: 50 })).toBeNull());
});
