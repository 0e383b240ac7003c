import { describe, expect, it } from "vitest";
import { EDITIONS, type Edition } from "../src/basis/edition.js";
import type { Panel, Segment } from "../src/job/schema.js";
import { freePairs, legOf, occupiedSpaces } from "../src/service/panel-spaces.js";
import { type AmpacityGiven, ampacity, ampacityAmperes, ampacityCells, nearAmperes } from "../src/sizing/ampacity.js";
import { type BoxContents, boxVolume } from "../src/sizing/box-fill.js";
import { groundingConductor, shortOfCmil } from "../src/sizing/grounding.js";
import { ambientOf, isWet } from "../src/sizing/place.js";
import { conductorArea, conductorCell, fillLimit, fillPercent, leastRaceway } from "../src/sizing/raceway-fill.js";
import type { Worked } from "../src/worked.js";

const edition = "2023" as const;
const sections = (line: Worked) => line.citations.map(({ section }) => section).sort();

// Volumes of Table 314.16(B): 14 AWG 2.0, 12 AWG 2.25, 10 AWG 2.5, 6 AWG 5.0 in³, as src/tables/box-allowance.ts gives its sources.
describe("box volume by 314.16(B)", () => {
  const empty: BoxContents = { conductors: [{ size: "12", count: 1 }], grounds: { size: "12", count: 0 }, devices: [], internalClamps: false };
  const box = (contents: Partial<BoxContents>, of: Edition = edition) => boxVolume({ id: "b", contents: { ...empty, ...contents }, edition: of });
  it.each([
    ["one conductor", {}, "2.25"],
    [
      "two sizes",
      {
        conductors: [
          { size: "12", count: 2 },
          { size: "14", count: 3 },
        ],
      },
      "10.5",
    ], // 4.5 + 6
    [
      "clamps count one of the largest",
      {
        conductors: [
          { size: "14", count: 2 },
          { size: "10", count: 1 },
        ],
        internalClamps: true,
      },
      "9",
    ], // 4 + 2.5 + 2.5
    ["the largest may be the ground", { grounds: { size: "10", count: 1 }, internalClamps: true }, "7.25"], // 2.25 + 2.5 + 2.5
    ["a ground that is not there is not the largest", { grounds: { size: "6", count: 0 }, internalClamps: true }, "4.5"],
    [
      "conductors of none are not the largest",
      {
        conductors: [
          { size: "12", count: 1 },
          { size: "6", count: 0 },
        ],
        internalClamps: true,
      },
      "4.5",
    ],
    ["two kinds of fitting, one allowance each", { fittingKinds: 2 }, "6.75"],
    ["a device counts twice its own conductor", { devices: [{ size: "14", gangs: 1 }] }, "6.25"], // 2.25 + 4
    ["one wider than 2 in twice for each gang", { devices: [{ size: "12", gangs: 2 }] }, "11.25"], // 2.25 + 9
    ["grounds alone", { conductors: [], grounds: { size: "12", count: 2 } }, "2.25"],
  ] as const)("%s", (_, contents, volume) => expect(box(contents)?.value).toBe(volume));
  // One for all in 2017; from 2020 one for the first four and a quarter for each above (314.16(B)(5)).
  it.each([
    [0, "2.25", "2.25"],
    [1, "4.5", "4.5"],
    [4, "4.5", "4.5"],
    [5, "4.5", "5.0625"],
    [8, "4.5", "6.75"],
  ])("%d grounds: %s in³ in 2017, %s from 2020", (count, old, since) => {
    expect(EDITIONS.map((of) => box({ grounds: { size: "12", count } }, of)?.value)).toEqual([old, since, since, since]);
  });
  it("6 AWG has an allowance and 4 AWG has none, wherever it is", () => {
    expect(box({ conductors: [{ size: "6", count: 2 }] })?.value).toBe("10");
    expect(box({ conductors: [{ size: "4", count: 2 }] })).toBeNull();
    expect(box({ grounds: { size: "4", count: 1 } })).toBeNull();
    expect(box({ devices: [{ size: "4", gangs: 1 }] })).toBeNull();
  });
  it("nothing in it asks nothing", () => expect(box({ conductors: [] })).toBeNull());
  it("the largest counts for the clamps wherever it stands: 4 + 2.5 + 2.5", () => {
    const conductors = [
      { size: "10", count: 1 },
      { size: "14", count: 2 },
    ] as const;
    expect(box({ conductors, internalClamps: true })?.value).toBe("9");
    expect(box({ conductors: [conductors[1], conductors[0], conductors[1]], internalClamps: true })?.value).toBe("13");
    expect(box({ conductors, grounds: { size: "14", count: 1 }, internalClamps: true })?.value).toBe("11");
  });
  it("writes down nothing of what is not there", () => {
    const none = [
      { size: "12", count: 2 },
      { size: "6", count: 0 },
    ] as const;
    expect(box({ conductors: none })?.expression).toBe("2 × 2.25 in³ (conductors, 12 AWG)");
    expect(box({})?.expression).toBe("1 × 2.25 in³ (conductors, 12 AWG)");
  });
  it("names each part with its count, its volume and its size, and cites section and table", () => {
    const line = box({ conductors: [{ size: "12", count: 4 }], grounds: { size: "10", count: 5 }, internalClamps: true })!;
    expect(line.expression).toBe("4 × 2.25 in³ (conductors, 12 AWG) + 1 × 2.5 in³ (clamps, 10 AWG) + 1.25 × 2.5 in³ (grounds, 10 AWG)");
    expect(sections(line)).toEqual(["314.16(B)", "Table 314.16(B)"]);
    expect(line.cells.map(({ row, value }) => [row, value])).toEqual([
      ["12", "2.25"],
      ["10", "2.5"],
      ["10", "2.5"],
    ]);
  });
});

// PVC-40 1 in: 0.832 in² whole, 0.333 at 40 %, 0.258 at 31 %, 0.441 at 53 %, 0.499 at 60 % (Chapter 9 Table 4); 6 AWG THWN-2 0.0507 in² (Table 5).
describe("raceway fill by Chapter 9", () => {
  const limit = (count: number, nipple?: boolean) =>
    fillLimit({ id: "l", raceway: "PVC-40", tradeSize: "1", count, ...(nipple === undefined ? {} : { nipple }), edition });
  it.each([
    [1, "0.441", "53 %"],
    [2, "0.258", "31 %"],
    [3, "0.333", "40 %"],
    [9, "0.333", "40 %"],
  ])("%d conductors fill 1 in to %s in²", (count, area, percent) => {
    expect(limit(count)?.value).toBe(area);
    expect(limit(count)?.label).toContain(percent);
    expect(sections(limit(count)!)).toEqual(["Chapter 9 Table 1", "Chapter 9 Table 4"]);
  });
  it.each([1, 2, 3])("a nipple is filled to 60 %% by %d", (count) => {
    expect(limit(count, true)?.value).toBe("0.499");
    expect(limit(count, true)?.label).toContain("60 %");
  });
  it("a raceway of which the table has no such size has no limit and no per cent", () => {
    const area = conductorArea({ id: "a", conductors: [{ size: "6", insulation: "THWN-2", count: 3 }], othersIn2: 0, edition })!;
    expect(fillLimit({ id: "l", raceway: "straw", tradeSize: "1", count: 3, edition })).toBeNull();
    expect(fillPercent({ id: "p", area, raceway: "straw", tradeSize: "1", edition })).toBeNull();
  });
  it("areas of other circuits are added and said to be as entered", () => {
    const of = (othersIn2: number) => conductorArea({ id: "a", conductors: [{ size: "6", insulation: "THWN-2", count: 3 }], othersIn2, edition })!;
    expect([of(0).value, of(0.1).value]).toEqual(["0.1521", "0.2521"]);
    expect(of(0).citations.map(({ document }) => document)).toEqual(["NFPA 70"]);
    expect(of(0.1).citations.map(({ document }) => document)).toEqual(["Job file", "NFPA 70"]);
    expect(of(0.1).expression).toBe("3 × 0.0507 in² + 0.1 in² of other circuits");
    expect(of(0).expression).toBe("3 × 0.0507 in²");
    expect(of(0).cells.map(({ value }) => value)).toEqual(["0.0507"]);
  });
  it("one conductor the table lacks leaves the whole without an area", () => {
    const conductors = [
      { size: "6", insulation: "THWN-2", count: 3 },
      { size: "6", insulation: "bare", count: 1 },
    ] as const;
    expect(conductorArea({ id: "a", conductors, othersIn2: 0, edition })).toBeNull();
  });
  it("compact goes by Table 5A where it lists the conductor, else by Table 5", () => {
    const table = (compact: boolean, size: "10" | "4/0") => conductorCell({ size, insulation: "XHHW-2", compact }, "area", edition)?.citation.section;
    expect(table(true, "4/0")).toBe("Chapter 9 Table 5A");
    expect(table(false, "4/0")).toBe("Chapter 9 Table 5");
    expect(table(true, "10")).toBe("Chapter 9 Table 5");
    expect(conductorCell({ size: "6", insulation: "bare" }, "area", edition)).toBeNull();
  });
  // EMT 40 %: 1/2 in 0.122, 3/4 in 0.213, 1 in 0.346 in² (Chapter 9 Table 4).
  it.each([
    ["0.122", "1/2"],
    ["0.1221", "3/4"],
    ["0.213", "3/4"],
    ["0.2131", "1"],
    ["1000", null],
  ])("%s in² of three conductors: EMT %s", (areaIn2, size) => expect(leastRaceway({ raceway: "EMT", areaIn2, count: 3, edition })).toBe(size));
  it("a nipple may be smaller: EMT 1/2 in holds 0.182 in² at 60 %", () => {
    expect(leastRaceway({ raceway: "EMT", areaIn2: "0.182", count: 3, nipple: true, edition })).toBe("1/2");
    expect(leastRaceway({ raceway: "EMT", areaIn2: "0.182", count: 3, nipple: false, edition })).toBe("3/4");
  });
  it("per cent is of the whole inside area: 0.333 / 0.832 = 40.02 %", () => {
    const area = conductorArea({ id: "a", conductors: [], othersIn2: 0.333, edition })!;
    const line = fillPercent({ id: "p", area, raceway: "PVC-40", tradeSize: "1", edition })!;
    expect(Number(line.value)).toBeCloseTo(40.02, 2);
    expect(line.inputs).toEqual(["a"]);
    expect(line.expression).toBe("0.333 in² / 0.832 in² × 100");
    expect(sections(line)).toEqual(["Chapter 9 Table 4"]);
  });
});

// Spaces numbered down both sides, odd left and even right (common practice, no source).
describe("panel spaces", () => {
  const panel = (spaces: number, directory: readonly (readonly [number, 1 | 2])[] = []) =>
    ({ spaces, directory: directory.map(([space, poles]) => ({ space, poles, serves: "x" })) }) as unknown as Panel;
  it("legs alternate down each side, alike across", () => {
    expect([1, 2, 3, 4, 5, 6, 7, 8].map(legOf)).toEqual(["L1", "L1", "L2", "L2", "L1", "L1", "L2", "L2"]);
  });
  it("a two-pole breaker holds its space and the next below it", () => {
    expect([
      ...occupiedSpaces(
        panel(12, [
          [1, 1],
          [4, 2],
        ]),
      ),
    ]).toEqual([1, 4, 6]);
    expect([...occupiedSpaces(panel(12))]).toEqual([]);
  });
  it("pairs stand one above the other, both free, within the panel", () => {
    expect(freePairs(panel(4))).toEqual([
      [1, 3],
      [2, 4],
    ]);
    expect(freePairs(panel(4, [[3, 1]]))).toEqual([[2, 4]]);
    expect(
      freePairs(
        panel(6, [
          [1, 1],
          [4, 1],
        ]),
      ),
    ).toEqual([[3, 5]]);
    expect(freePairs(panel(2))).toEqual([]);
    expect(freePairs(panel(3))).toEqual([[1, 3]]);
  });
});

// Table 250.122 and the circular mils of Chapter 9 Table 8: 12 AWG 6,530, 10 AWG 10,380, 8 AWG 16,510, 6 AWG 26,240, 4 AWG 41,740.
describe("equipment grounding conductor by 250.122", () => {
  const ground = (overcurrent: number, leastSize: "14" | "12" | "10" | "8" | "6" | "4", usedSize = leastSize, material: "copper" | "aluminum" = "copper") =>
    groundingConductor({ id: "g", overcurrent, material, leastSize, usedSize, edition });
  it.each([
    [20, "12", "12"],
    [21, "10", "10"],
    [60, "6", "10"],
    [61, "4", "8"],
    [100, "4", "8"],
  ] as const)("%d A: %s AWG hots, %s AWG ground", (amperes, hot, size) => {
    expect(ground(amperes, hot).size).toBe(size);
    expect(sections(ground(amperes, hot).worked)).toEqual(["Table 250.122"]);
    expect(ground(amperes, hot).worked.expression).toBe(`by ${amperes} A overcurrent device`);
  });
  it("never larger than the circuit's own conductors, 250.122(A)", () => {
    const found = ground(60, "12");
    expect([found.size, found.leastCmil]).toEqual(["12", "6530"]);
    expect(sections(found.worked)).toEqual(["250.122(A)", "Table 250.122"]);
    expect(found.worked.expression).toBe("by 60 A overcurrent device: 10 AWG, but not over the circuit conductors, 12 AWG");
    expect(ground(60, "10").worked.citations.map(({ section }) => section)).toEqual(["Table 250.122"]);
  });
  it("raised in proportion, 250.122(B): 10,380 × 26,240 / 16,510 = 16,497.3 cmil, within 8 AWG", () => {
    const found = ground(50, "8", "6");
    expect([found.size, found.worked.value]).toEqual(["8", "8"]);
    expect(Number(found.leastCmil)).toBeCloseTo(16497.35, 2);
    expect(sections(found.worked)).toEqual(["250.122(B)", "Chapter 9 Table 8", "Table 250.122"]);
    expect(found.worked.cells.map(({ value }) => value)).toEqual(["10", "10380", "26240", "16510"]);
    expect(found.worked.expression).toBe("10,380 cmil × 26,240 / 16,510 = 16,497.3 cmil, so 8 AWG");
    expect(found.worked.rounding).not.toBeNull();
  });
  it("raised, and still not larger than the hots in use: 10,380 × 6,530 / 4,110 = 16,492 cmil, with 12 AWG hots", () => {
    expect(ground(60, "14", "12").size).toBe("12");
  });
  it("smaller hots than the least ask no less", () => expect(ground(60, "6", "8").size).toBe("10"));
  it("aluminum by its own column; nothing above 1200 A", () => {
    expect(ground(60, "4", "4", "aluminum").size).toBe("8");
    expect(() => ground(1201, "4")).toThrow(RangeError);
  });
  it.each([
    ["16510", 0],
    ["16509", 0],
    ["33020", 50],
  ])("8 AWG against %s cmil is short by %d %%", (needed, percent) => expect(Number(shortOfCmil("8", needed, edition))).toBe(percent));
});

// Table 310.16, its correction by Table 310.15(B)(1)(1) and its adjustment by Table 310.15(C)(1), as in src/tables.
describe("ampacity in a place", () => {
  const six: AmpacityGiven = { id: "a", size: "6", material: "copper", insulation: "THWN-2", ambientC: 30, currentCarrying: 3, terminalC: 75, edition };
  const of = (given: Partial<AmpacityGiven>) => ampacity({ ...six, ...given });
  it.each([
    ["75 A whole", {}, "75", "65", "65"],
    ["60 °C terminals hold 55 A", { terminalC: 60 }, "75", "55", "55"],
    ["31 °C: 75 × 0.96", { ambientC: 31 }, "72", "65", "65"],
    ["40 °C: 75 × 0.91, 41 °C: 0.87", { ambientC: 41 }, "65.25", "65", "65"],
    ["46 °C: 75 × 0.82", { ambientC: 46 }, "61.5", "65", "61.5"],
    ["four in it: 75 × 0.8", { currentCarrying: 4 }, "60", "65", "60"],
    ["seven: 75 × 0.7", { currentCarrying: 7 }, "52.5", "65", "52.5"],
    ["aluminum 55 A, 50 A at its terminals", { material: "aluminum" }, "55", "50", "50"],
    ["NM-B corrects from 75 A and stays at 55 A", { insulation: "NM-B" }, "75", "55", "55"],
    ["UF-B corrects from 55 A", { insulation: "UF-B", ambientC: 35 }, "50.05", "55", "50.05"],
    ["XHHW in the wet counts as 75 °C", { insulation: "XHHW", wet: true }, "65", "65", "65"],
    ["XHHW in the dry as 90 °C", { insulation: "XHHW", wet: false }, "75", "65", "65"],
  ] as const)("%s", (_, given, corrected, terminal, allowed) => {
    const found = of(given)!;
    expect([found.corrected.value, found.terminal.value, found.allowed.value]).toEqual([corrected, terminal, allowed]);
    const cells = ampacityCells({ ...six, ...given })("6")!;
    expect([ampacityAmperes(cells).terminal.toFixed(), ampacityAmperes(cells).allowed.toFixed()]).toEqual([terminal, allowed]);
    expect(nearAmperes(cells).terminal).toBe(Number(terminal));
    expect(nearAmperes(cells).allowed).toBeCloseTo(Number(allowed), 9);
  });
  it("a cable's limit is its own section's, a conductor's its terminals'", () => {
    expect(sections(of({})!.allowed)).toEqual(["110.14(C)(1)"]);
    expect(sections(of({ insulation: "NM-B" })!.allowed)).toEqual(["334.80"]);
    expect(sections(of({ insulation: "UF-B" })!.allowed)).toEqual(["340.80"]);
    expect(of({})!.allowed.inputs).toEqual(["a.corrected", "a.terminal"]);
    expect(sections(of({ currentCarrying: 4 })!.corrected)).toEqual(["Table 310.15(B)(1)(1)", "Table 310.15(C)(1)", "Table 310.16"]);
    expect(of({ currentCarrying: 4 })!.corrected.cells.map(({ value }) => value)).toEqual(["75", "1", "80"]);
  });
  it("dry when not said to be wet: XHHW keeps its 75 A of 90 °C", () => expect(of({ insulation: "XHHW" })!.corrected.value).toBe("75"));
  it("none where the table is blank, the air too hot or the cable not made", () => {
    expect(of({ ambientC: 85 })).not.toBeNull();
    expect(of({ ambientC: 86 })).toBeNull();
    expect(of({ insulation: "UF-B", ambientC: 56 })).toBeNull();
    expect(of({ size: "18" })).toBeNull();
    expect(of({ insulation: "NM-B", size: "2" })).not.toBeNull();
    expect(of({ insulation: "NM-B", size: "1" })).toBeNull();
    expect(() => of({ insulation: "string" as never })).toThrow(RangeError);
  });
});

describe("the place of a segment", () => {
  const stretch = (fields: object) =>
    ({ name: "way", place: "outdoors", method: "PVC-40", conductors: { insulation: "THWN-2" }, ...fields }) as unknown as Segment;
  const air = (fields: object) => ambientOf({ id: "s", segment: stretch(fields), path: "s.route[0]", edition });
  it.each([
    ["indoors", false, 30],
    ["outdoors", true, 40],
    ["buried", true, 30],
    ["attic", false, 55],
  ])("%s: wet %s, air of %d °C taken and said (common practice, no source)", (place, wet, celsius) => {
    expect(isWet(stretch({ place }))).toBe(wet);
    expect(air({ place })).toMatchObject({ celsius, rooftop: null });
    expect(air({ place }).assumption).toMatchObject({ path: "s.route[0].ambient", says: expect.stringContaining(`${celsius} °C`) });
  });
  it("air as given is no assumption", () => expect(air({ ambient: 21 })).toMatchObject({ celsius: 21, assumption: null }));
  // 2023: under 3/4 in above the roof in the sun 33 °C more, but for XHHW-2 (310.15(B)(2)).
  it.each([
    [{ rooftop_height: 0.74 }, 73],
    [{ rooftop_height: 0.75 }, 40],
    [{ rooftop_height: 0.5, ambient: 20 }, 53],
    [{ rooftop_height: 0.5, place: "attic" }, 55],
    [{ rooftop_height: 0.5, conductors: { insulation: "XHHW-2" } }, 40],
    [{ rooftop_height: 0.5, method: "UF-B", conductors: { insulation: "XHHW-2" } }, 73],
  ])("%j: %d °C", (fields, celsius) => expect(air(fields).celsius).toBe(celsius));
});
