import { describe, expect, it } from "vitest";
import { EDITIONS } from "../src/basis/edition.js";
import { type Electrode, electrodeConductor } from "../src/sizing/electrode-conductor.js";
import { buildingGrounding, rodsNeeded } from "../src/sizing/electrodes.js";
import { supplyBonding } from "../src/sizing/supply-bonding.js";
import type { Size } from "../src/tables/size.js";

const edition = "2023" as const;
type Metal = "copper" | "aluminum";
const gec = (size: Size, sets: number, electrodes: readonly Electrode[], material: Metal = "copper", of: Metal = "copper") =>
  electrodeConductor({ id: "g", supply: { size, material: of, sets }, material, electrodes, edition }).size;
const jumper = (size: Size, sets: number, material: Metal = "copper", of: Metal = "copper") =>
  supplyBonding({ id: "b", label: "b", supply: { size, material: of, sets }, material, edition })?.size ?? null;

describe("published grounding electrode conductors, Table 250.66", () => {
  it("350 kcmil copper: 2 AWG (EC&M, http://www.ecmweb.com/quizzes/code-quiz-106?page=4)", () => expect(gec("350", 1, ["water-pipe"])).toBe("2"));
  it("two 3/0 copper: 335,600 cmil, 2 AWG; a reply there reads 1/0 from the next row (Mike Holt Forums, http://forums.mikeholt.com/showthread.php?t=153038)", () => {
    const found = electrodeConductor({
      id: "g",
      supply: { size: "3/0", material: "copper", sets: 2 },
      material: "copper",
      electrodes: ["water-pipe"],
      edition,
    });
    expect(found.size).toBe("2");
    expect(found.worked.expression).toContain("335,600");
  });
  it("200 A service (2/0 copper), rods alone: 6 AWG (ElectricianTalk, https://electriciantalk.com)", () => expect(gec("2/0", 1, ["rod"])).toBe("6"));
  it("past a rod and on to a concrete-encased electrode: 4 AWG (Electrical License Renewal, https://www.electricallicenserenewal.com/Electrical-Continuing-Education-Courses/NEC-Content.php?sectionID=1000)", () =>
    expect(gec("500", 1, ["rod", "concrete-encased"])).toBe("4"));
  it("500 kcmil copper: 1/0 AWG (ExpertCE, https://expertce.com/learn-articles/nec-250-66-grounding-electrode-conductor)", () =>
    expect(gec("500", 1, ["structural-metal"])).toBe("1/0"));
});

describe("rows of Table 250.66 below, at and above their tops (cooper-electric.com, voltagelab.com/?p=10400)", () => {
  it.each([
    ["2", 1, "copper", "8", "6"],
    ["1", 1, "copper", "6", "4"],
    ["1/0", 1, "copper", "6", "4"],
    ["2/0", 1, "copper", "4", "2"],
    ["3/0", 1, "copper", "4", "2"],
    ["4/0", 1, "copper", "2", "1/0"],
    ["350", 1, "copper", "2", "1/0"],
    ["400", 1, "copper", "1/0", "3/0"],
    ["600", 1, "copper", "1/0", "3/0"],
    ["700", 1, "copper", "2/0", "4/0"],
    ["600", 2, "copper", "3/0", "250"],
    ["1/0", 1, "aluminum", "8", "6"],
    ["2/0", 1, "aluminum", "6", "4"],
    ["4/0", 1, "aluminum", "4", "2"],
    ["250", 1, "aluminum", "4", "2"],
    ["300", 1, "aluminum", "2", "1/0"],
    ["500", 1, "aluminum", "2", "1/0"],
    ["900", 1, "aluminum", "1/0", "3/0"],
    ["900", 2, "aluminum", "3/0", "250"],
  ] as const)("%s × %d %s: %s copper, %s aluminum", (size, sets, of, copper, aluminum) => {
    expect(gec(size, sets, ["water-pipe"], "copper", of)).toBe(copper);
    expect(gec(size, sets, ["water-pipe"], "aluminum", of)).toBe(aluminum);
  });
});

describe("what a portion goes on to", () => {
  it.each([
    [["rod"], "aluminum", "4"],
    [["rod", "water-pipe"], "copper", "2"],
    [["ring"], "copper", "2"],
    [["rod", "ring"], "copper", "2"],
    [["concrete-encased"], "copper", "4"],
  ] as const)("%j in %s from a 250 kcmil copper supply: %s AWG", (electrodes, material, size) => expect(gec("250", 1, electrodes, material)).toBe(size));
  it("a limit never raises the table's size", () => expect(gec("2", 1, ["concrete-encased"])).toBe("8"));
});

describe("published bonding sizes, Table 250.102(C)(1)", () => {
  it("250 kcmil copper: 2 AWG; three of them: 2/0; two 3/0: 2 copper or 1/0 aluminum (https://www.thebuildingcodeforum.com/forum/threads/sizing-a-supply-side-or-main-bond-with-parallel-conductors.26483)", () => {
    expect(jumper("250", 1)).toBe("2");
    expect(jumper("250", 3)).toBe("2/0");
    expect(jumper("3/0", 2)).toBe("2");
    expect(jumper("3/0", 2, "aluminum")).toBe("1/0");
  });
  it("four 500 kcmil copper: 12.5 % of 2,000,000 cmil, 250 kcmil (Mike Holt Forums, https://forums.mikeholt.com/threads/electrician.27781)", () => {
    const found = supplyBonding({ id: "b", label: "b", supply: { size: "500", material: "copper", sets: 4 }, material: "copper", edition })!;
    expect(found.size).toBe("250");
    expect(found.worked.expression).toContain("= 250,000 cmil");
  });
  it("400 kcmil in each raceway: 1/0 (NFPA community, https://community.nfpa.org/thread/36767)", () => expect(jumper("400", 1)).toBe("1/0"));
  it("above the table of two metals there is no answer; nor beyond the largest size", () => {
    expect(jumper("750", 3, "copper", "aluminum")).toBeNull();
    expect(jumper("1000", 9)).toBeNull();
  });
  it("12.5 % is stated by every edition", () => {
    for (const each of EDITIONS)
      expect(supplyBonding({ id: "b", label: "b", supply: { size: "600", material: "copper", sets: 2 }, material: "copper", edition: each })?.size).toBe("3/0");
  });
});

describe("electrodes", () => {
  it.each([
    [null, "2"],
    [25, "1"],
    [25.1, "2"],
  ])("one rod measured at %s Ω: %s (250.53(A)(2), memory)", (measuredOhms, count) => expect(rodsNeeded({ id: "r", measuredOhms, edition }).value).toBe(count));
  it("second building: electrodes for a feeder, none for one branch circuit with its grounding conductor, neutral never bonded (Home Wiring Archives, https://homewiringarchives.tripod.com/detgaragesub.html)", () => {
    const at = (supply: Parameters<typeof buildingGrounding>[0]["supply"]) => buildingGrounding({ supply, edition });
    expect([at("feeder").electrodes, at("one-branch-circuit").electrodes]).toEqual([true, false]);
    expect(at("several-branch-circuits").electrodes).toBe(true);
    expect(at("feeder").neutralBonded).toBe(false);
  });
});
