import { describe, expect, it } from "vitest";
import { neutralLoad } from "../src/service/neutral-load.js";
import { currentCarryingCount, type NeutralCircuit, neutralSize } from "../src/sizing/neutral.js";
import { type ParallelConductor, parallelAmpacity, parallelFaults, parallelGrounding } from "../src/sizing/parallel.js";
import { AMPACITY } from "../src/tables/ampacity.js";
import { readCell } from "../src/tables/code-table.js";
import type { Size } from "../src/tables/size.js";
import { worked } from "../src/worked.js";

const edition = "2023" as const;
const near = (actual: string | number, expected: number, tolerance: number) => expect(Math.abs(Number(actual) - expected)).toBeLessThanOrEqual(tolerance);
const each = (size: Size) => worked({ id: "each", label: "each", value: readCell(AMPACITY, size, "cu75", edition)!.value, unit: "A", expression: "" });
const sets = (size: Size, count: number) => parallelAmpacity({ id: "p", each: each(size), size, sets: count, edition })?.value ?? null;

describe("parallel conductors, 310.10(G)", () => {
  it("six 1000 kcmil in separate raceways: 3270 A (https://notes.informatiqal.com/can-you-put-parallel-feeders-in-the-same-conduit.html)", () =>
    expect(sets("1000", 6)).toBe("3270"));
  it("two 3/0 copper for a 400 A service (Mike Holt Forums, https://forums.mikeholt.com/threads/400-amp-service-parallel-conductors.30176/)", () =>
    expect(sets("3/0", 2)).toBe("400"));
  it("1/0 and larger; 1 AWG not (Mike Holt newsletter, https://mikeholt.com/newsletters.php?action=reply&inResponseTo=22810&letterID=1851)", () => {
    expect(sets("1/0", 2)).toBe("300");
    expect(sets("1", 2)).toBeNull();
    expect(sets("1", 1)).toBe("130");
  });
  it("no half sets", () => expect(() => sets("1/0", 1.5)).toThrow(RangeError));

  const one: ParallelConductor = { feet: 80, material: "copper", size: "1/0", insulation: "THWN-2", termination: "set screw" };
  it.each([
    [{}, []],
    [{ feet: 81 }, ["feet"]],
    [{ material: "aluminum" }, ["material"]],
    [{ size: "2/0" }, ["size"]],
    [{ size: "1" }, ["too-small", "size"]],
    [{ insulation: "XHHW-2" }, ["insulation"]],
    [{ termination: "compression" }, ["termination"]],
  ] as const)("the second differing by %j: %j (the five of the same newsletter)", (other, faults) =>
    expect(parallelFaults([one, { ...one, ...other }])).toEqual(faults),
  );
  it("one conductor alone is not parallel, nor are none", () => {
    expect(parallelFaults([{ ...one, size: "6" }])).toEqual([]);
    expect(parallelFaults([])).toEqual([]);
  });
  it("one that differs among several is enough", () => {
    expect(parallelFaults([one, one, { ...one, insulation: "XHHW-2" }])).toEqual(["insulation"]);
    expect(parallelFaults([one, one, { ...one, feet: 81 }])).toEqual(["feet"]);
  });

  it("400 A in parallel raceways, 3/0 raised to 250 kcmil: 1 AWG whole in each (Tests.com, https://www.tests.com/practice/Electrician-Math-Practice-Test)", () => {
    const found = parallelGrounding({ id: "g", overcurrent: 400, material: "copper", leastSize: "3/0", usedSize: "250", raceways: 2, edition });
    expect([found.size, found.count]).toEqual(["1", 2]);
    near(found.leastCmil, 78404, 20);
    expect(found.worked.citations.map((c) => c.section)).toContain("250.122(F)");
  });
});

describe("neutrals counted, 310.15(E) (examples of https://forums.mikeholt.com/threads/310-15-e-1.2562113/latest)", () => {
  const count = (...circuits: NeutralCircuit[]) => currentCarryingCount({ id: "c", circuits, edition }).value;
  const circuit = (hots: 1 | 2 | 3, system: "split" | "wye", nonlinear = false): NeutralCircuit => ({ hots, neutral: true, system, nonlinear });
  it("two two-wire circuits: 4", () => expect(count(circuit(1, "split"), circuit(1, "split"))).toBe("4"));
  it("the same two on one shared neutral: 2", () => expect(count(circuit(2, "split"))).toBe("2"));
  it("two legs and neutral of 208Y/120: 3", () => expect(count(circuit(2, "wye"))).toBe("3"));
  it("three legs and neutral of 208Y/120: 3; mainly nonlinear: 4", () => {
    expect(count(circuit(3, "wye"))).toBe("3");
    expect(count(circuit(3, "wye", true))).toBe("4");
  });
  it("a nonlinear split-phase neutral counts too, on the safe side", () => expect(count(circuit(2, "split", true))).toBe("3"));
  it("no neutral, none counted", () => expect(count({ hots: 2, neutral: false, system: "split", nonlinear: true })).toBe("2"));
});

describe("neutral load and size", () => {
  it("twenty apartments, twenty ranges, 230 V: 282 A with both reductions (Mike Holt Forums, https://forums.mikeholt.com/threads/an-exam-question-from-a-mike-holt-book.96646/)", () => {
    // Printed: 48,450 VA of lighting and 24,500 VA of ranges, 70 % of 35,000.
    const load = neutralLoad({ id: "n", load: { lineToNeutralVA: 48450, cookingVA: 35000, dryersVA: 0, volts: 230 }, edition });
    near(load.total.value, 282, 1);
    expect(neutralSize({ id: "s", load: load.total, material: "copper", terminalC: 75, floor: { kind: "service", size: "2" }, edition })?.size).toBe("300");
  });

  const size = (amperes: number, floor: Size, kind: "feeder" | "service" = "feeder") =>
    neutralSize({
      id: "s",
      load: worked({ id: "n", label: "n", value: String(amperes), unit: "A", expression: "" }),
      material: "copper",
      terminalC: 75,
      floor: { kind, size: floor },
      edition,
    });
  it.each([
    [65, "8", "6", "load"],
    [65.1, "8", "4", "load"],
    [20, "8", "8", "floor"],
    [50, "8", "8", "load"],
  ] as const)("%d A, not smaller than %s: %s by %s (Table 310.16, 75 °C)", (amperes, floor, expected, governs) => {
    const found = size(amperes, floor)!;
    expect([found.size, found.governs]).toEqual([expected, governs]);
  });
  it("cites the feeder or the service clause", () => {
    expect(size(20, "8", "service")!.worked.citations.map((c) => c.section)).toContain("250.24(D)");
    expect(size(20, "8")!.worked.citations.map((c) => c.section)).toContain("215.2(A)");
  });
  it("no size carries more than the table's last", () => expect(size(900, "8")).toBeNull());
});
