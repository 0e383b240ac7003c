import { describe, expect, it } from "vitest";
import { unamended } from "../src/basis/basis.js";
import { leastCover, trenchDepth } from "../src/sizing/burial.js";

// Table 300.5(A), general: UF-B 24 in, RMC and IMC 6, PVC 18, a residential 120 V, 20 A circuit with GFCI 12. Under a dwelling's driveway 18, 18, 18 and 12.
const basis = unamended("2023");
const cover = (more: Partial<Parameters<typeof leastCover>[0]>) => leastCover({ id: "cover", method: "PVC-40", place: "general", basis, ...more });

describe("least cover, Table 300.5(A)", () => {
  it.each([
    ["PVC-40", "general", false, "18"],
    ["UF-B", "general", false, "24"],
    ["RMC", "general", false, "6"],
    ["IMC", "general", false, "6"],
    ["UF-B", "general", true, "12"],
    ["RMC", "general", true, "6"],
    ["UF-B", "under-dwelling-driveway", false, "18"],
    ["PVC-40", "under-dwelling-driveway", true, "12"],
  ] as const)("%s, %s, small circuit %s: %s in", (method, place, small120V, inches) => expect(cover({ method, place, small120V }).value).toBe(inches));

  it("a jurisdiction raises it, cited beside the table's own; one that asks less changes nothing", () => {
    const local = (inches: number) => cover({ basis: { ...basis, leastCover: { general: { inches, replaces: 18, citation: "Ordinance 12" } } } });
    const raised = local(24);
    expect([raised.value, raised.expression]).toEqual(["24", "24 in by the jurisdiction, in place of 18 in"]);
    expect(raised.citations.map(({ section }) => section)).toContain("Ordinance 12");
    for (const inches of [18, 12]) {
      expect([local(inches).value, local(inches).expression]).toEqual(["18", "18 in"]);
      expect(local(inches).citations.map(({ section }) => section)).not.toContain("Ordinance 12");
    }
  });
});

it("a trench is as deep as its cover, what lies in it and the bedding", () => {
  const depth = trenchDepth({ id: "depth", cover: cover({}), outsideIn: "1.315", beddingIn: 2 });
  expect([depth.value, depth.inputs]).toEqual(["21.315", ["cover"]]);
});
