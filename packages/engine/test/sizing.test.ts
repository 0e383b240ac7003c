import fc from "fast-check";
import { lusolve } from "mathjs";
import { describe, expect, it } from "vitest";
import { leastConductor, shortfalls } from "../src/sizing/conductor.js";
import { groundingConductor, shortOfCmil } from "../src/sizing/grounding.js";
import { standardRatingAtLeast } from "../src/sizing/overcurrent.js";
import { fillLimit } from "../src/sizing/raceway-fill.js";
import { dropPercent, voltageDrop } from "../src/sizing/voltage-drop.js";
import { compareSizes, SIZES, type Size } from "../src/tables/size.js";

const base = { id: "x", material: "copper", ambientC: 30, currentCarrying: 2, edition: "2023" } as const;
const fifty = { load: 50, terminalLoad: 50, overcurrent: 50 };

describe("standard ratings, 240.6(A)", () => {
  it.each([
    [49.99, 50],
    [50, 50],
    [50.01, 60],
    [400, 400],
  ])("%d A → %d A", (amperes, rating) => expect(standardRatingAtLeast(amperes, "2023")).toBe(rating));
  it("10 A is standard from 2023 only", () => {
    expect(standardRatingAtLeast(10, "2020")).toBe(15);
    expect(standardRatingAtLeast(10, "2023")).toBe(10);
  });
  it("has no answer above 600 A", () => expect(standardRatingAtLeast(600.01, "2023")).toBeNull());
});

describe("50 A: 8 AWG fails where 60 °C governs and serves at 75 °C terminals (110.14(C), 334.80)", () => {
  it.each([
    ["NM-B", 60, "6"],
    ["NM-B", 75, "6"],
    ["THWN-2", 60, "6"],
    ["THWN-2", 75, "8"],
    ["UF-B", 75, "6"],
  ] as const)("%s at %d °C terminals → %s AWG", (insulation, terminalC, size) =>
    expect(leastConductor({ ...base, insulation, terminalC }, fifty)?.size).toBe(size),
  );
  it("says why: the 8 AWG NM-B fails terminals, load and protection", () =>
    expect(shortfalls({ ...base, insulation: "NM-B", terminalC: 75, size: "8" }, fifty).short).toEqual(["terminals", "load", "protection"]));
});

describe("small conductors, 240.4(D)", () => {
  it.each([
    ["12", 20, []],
    ["12", 25, ["small-conductor"]],
    ["10", 30, []],
    ["10", 35, ["small-conductor"]],
  ] as const)("%s AWG behind %d A", (size, overcurrent, short) =>
    expect(shortfalls({ ...base, insulation: "THWN-2", terminalC: 75, size }, { load: 15, terminalLoad: 15, overcurrent }).short).toEqual(short),
  );
});

describe("a hot attic shared with others: the intermediate values, not only the size", () => {
  it("8 conductors at 50 °C: 75 A × 0.82 × 70 % (Tables 310.16, 310.15(B)(1)(1), 310.15(C)(1))", () => {
    const { ampacity } = shortfalls(
      { ...base, insulation: "THWN-2", terminalC: 75, size: "6", ambientC: 50, currentCarrying: 8 },
      { load: 48, terminalLoad: 60, overcurrent: 60 },
    );
    expect(ampacity?.corrected.value).toBe("43.05");
    expect(ampacity?.terminal.value).toBe("65");
  });
});

describe("equipment grounding in proportion, 250.122(B)", () => {
  it("8 → 1 AWG on 50 A: 52,617 cmil just fits 3 AWG at 52,620", () =>
    expect(groundingConductor({ id: "x", overcurrent: 50, material: "copper", leastSize: "8", usedSize: "1", edition: "2023" }).size).toBe("3"));
  it("6 → 4 AWG on 50 A: 16,511 cmil just misses 8 AWG at 16,510, and is within 0.1 % of it", () => {
    const found = groundingConductor({ id: "x", overcurrent: 50, material: "copper", leastSize: "6", usedSize: "4", edition: "2023" });
    expect(found.size).toBe("6");
    const short = shortOfCmil("8", found.leastCmil, "2023").toNumber();
    expect(short).toBeGreaterThan(0);
    expect(short).toBeLessThan(0.1);
  });
  it("stays at the table without a raise", () =>
    expect(groundingConductor({ id: "x", overcurrent: 60, material: "copper", leastSize: "6", usedSize: "6", edition: "2023" }).size).toBe("10"));
});

describe("voltage drop", () => {
  const run = (size: Size, feet: number, current: number) =>
    voltageDrop({ id: "x", label: "x", current, segments: [{ size, material: "copper", feet }], method: "dc-resistance", edition: "2023" });
  const percent = (size: Size, feet: number, current: number) =>
    Number(dropPercent({ id: "y", label: "y", drop: run(size, feet, current), volts: 120, edition: "2023" }).value);

  it("common practice, no source: 6 AWG at 25 ft raises no remark on a 50 A circuit; at 100 ft the worst leg sends it to 4 AWG", () => {
    expect(percent("6", 25, 50)).toBeLessThan(3);
    expect(percent("6", 100, 50)).toBeGreaterThan(3);
    expect(percent("4", 100, 50)).toBeLessThan(3);
  });
  it("common practice, no source: a 30 A outlet on 10 AWG goes to 8 or 6 AWG on a long run", () => {
    expect(percent("10", 100, 30)).toBeGreaterThan(3);
    expect(percent("6", 100, 30)).toBeLessThan(3);
  });

  it("agrees with a nodal solution of the three-wire network, one leg loaded, within 0.1 % (mathjs)", () => {
    const [r, amperes] = [(0.491 * 80) / 1000, 50];
    // Unknowns: voltage at load ends of L1 and N, with L1 source 120 V, N source 0 V; the load draws 50 A from L1 to N.
    const solved = lusolve(
      [
        [1 / r, 0],
        [0, 1 / r],
      ],
      [[120 / r - amperes], [amperes]],
    ) as number[][];
    const atLoad = solved[0]![0]! - solved[1]![0]!;
    const ours = Number(run("6", 80, amperes).value);
    expect(Math.abs(120 - atLoad - ours) / ours).toBeLessThan(0.001);
  });
  it("balanced 240 V: the same volts, half the per cent, and no neutral current (mathjs)", () => {
    const [r, amperes] = [(0.491 * 80) / 1000, 50];
    const solved = lusolve(
      [
        [1 / r, 0, 0],
        [0, 1 / r, 0],
        [0, 0, 1 / r],
      ],
      [[120 / r - amperes], [0], [-120 / r + amperes]],
    ) as number[][];
    expect(solved[1]![0]).toBeCloseTo(0, 9);
    const ours = Number(run("6", 80, amperes).value);
    expect(Math.abs(240 - (solved[0]![0]! - solved[2]![0]!) - ours) / ours).toBeLessThan(0.001);
  });
});

describe("fill limits", () => {
  it("go by the count of conductors: 53, 31, 40 % (Chapter 9 Table 1)", () => {
    const limit = (count: number) => fillLimit({ id: "x", raceway: "EMT", tradeSize: "1", count, edition: "2023" })!.value;
    expect([limit(1), limit(2), limit(3)]).toEqual(["0.458", "0.268", "0.346"]);
  });
});

describe("properties", () => {
  const size = (load: number, ambientC: number, currentCarrying: number) =>
    leastConductor(
      { ...base, insulation: "THWN-2", terminalC: 75, ambientC, currentCarrying },
      { load, terminalLoad: load, overcurrent: standardRatingAtLeast(load, "2023")! },
    )?.size ?? null;
  const notSmaller = (a: Size | null, b: Size | null) => b === null || (a !== null && compareSizes(b, a) >= 0);
  it("hotter, more crowded or more loaded never gives a smaller wire", () =>
    fc.assert(
      fc.property(
        fc.integer({ min: 5, max: 200 }),
        fc.integer({ min: -10, max: 60 }),
        fc.integer({ min: 2, max: 20 }),
        fc.integer({ min: 0, max: 30 }),
        (load, ambient, count, more) => {
          const before = size(load, ambient, count);
          return (
            notSmaller(before, size(load + more, ambient, count)) &&
            notSmaller(before, size(load, Math.min(85, ambient + more), count)) &&
            notSmaller(before, size(load, ambient, count + more))
          );
        },
      ),
      { numRuns: 1000 },
    ));
  it("a longer run never drops less", () =>
    fc.assert(
      fc.property(
        fc.constantFrom(...SIZES.slice(2)),
        fc.integer({ min: 1, max: 500 }),
        fc.integer({ min: 1, max: 500 }),
        (s, feet, more) =>
          Number(
            voltageDrop({ id: "x", label: "x", current: 30, segments: [{ size: s, material: "copper", feet: feet + more }], method: "K", edition: "2023" })
              .value,
          ) > Number(voltageDrop({ id: "x", label: "x", current: 30, segments: [{ size: s, material: "copper", feet }], method: "K", edition: "2023" }).value),
      ),
      { numRuns: 500 },
    ));
});
