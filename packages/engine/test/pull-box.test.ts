import fc from "fast-check";
import { evaluate } from "mathjs";
import { describe, expect, it } from "vitest";
import { EDITIONS } from "../src/basis/edition.js";
import { bendingSpace } from "../src/sizing/bending-space.js";
import { nextBetterBox } from "../src/sizing/next-better.js";
import { anglePull, backEntryDepth, entryDistance, isPullBox, markedForFewer, straightPull } from "../src/sizing/pull-box.js";
import { type BoxEntry, type BoxPull, pullBoxSize } from "../src/sizing/pull-box-size.js";
import { BENDING_SPACE_OPPOSITE, BENDING_SPACE_SIDE } from "../src/tables/bending-space.js";
import { BOX_ALLOWANCE } from "../src/tables/box-allowance.js";
import { type CodeTable, readCell } from "../src/tables/code-table.js";
import { METAL_BOX, type MetalBox } from "../src/tables/metal-box.js";
import { SIZES, type Size } from "../src/tables/size.js";
import { ALL_TRADE_SIZES, type AnyTradeSize, TRADE_INCHES } from "../src/tables/trade-size.js";
import type { Worked } from "../src/worked.js";

const edition = "2023" as const;
const pencil = ({ expression }: Worked) =>
  Number(
    evaluate(
      expression
        .replaceAll("×", "*")
        .replaceAll(/\b(in³|in)(?![a-z(])/g, "")
        .replaceAll("³", ""),
    ),
  );

describe("the tables", () => {
  const TABLES: readonly CodeTable[] = [BENDING_SPACE_OPPOSITE, BENDING_SPACE_SIDE, METAL_BOX];
  it.each(TABLES.map((table) => [table.id, table] as const))("%s: every cell is a numeral and cites in every edition", (_, table) => {
    expect(table.sources.length).toBeGreaterThan(0);
    for (const [row, cells] of Object.entries(table.rows)) {
      expect(cells).toHaveLength(table.columns.length);
      for (const column of table.columns)
        for (const each of EDITIONS) {
          const cell = readCell(table, row, column, each);
          if (cell !== null) expect(cell.value).toMatch(/^\d+(\.\d+)?$/);
        }
    }
  });
  it("bending space never shrinks with the size, is never less for two wires, and never less through the opposite wall", () => {
    for (const table of [BENDING_SPACE_SIDE, BENDING_SPACE_OPPOSITE])
      for (const column of table.columns) {
        const run = SIZES.flatMap((size) => readCell(table, size, column, edition)?.value ?? []).map(Number);
        expect(run).toEqual([...run].sort((a, b) => a - b));
      }
    for (const size of SIZES) {
      const side = readCell(BENDING_SPACE_SIDE, size, "one", edition);
      const through = readCell(BENDING_SPACE_OPPOSITE, size, "one", edition);
      if (side && through) expect(Number(through.value), size).toBeGreaterThanOrEqual(Number(side.value));
    }
  });
});

describe("metal boxes, Table 314.16(A)", () => {
  const volume = (box: MetalBox) => Number(readCell(METAL_BOX, box, "volume", edition)!.value);
  const holds = (box: MetalBox, size: string) => Math.floor(volume(box) / Number(readCell(BOX_ALLOWANCE, size, "volume", edition)!.value));
  it("bf-009: a 4 × 1-1/2 square box is 21 in³, not the 24 of its outside (SDM Magazine, sdmmag.com/articles/95557)", () =>
    expect(volume("4 × 1-1/2 square")).toBe(21));
  it.each([
    ["4 × 1-1/2 square", "12", 9, "EC&M, ecmweb.com/content/code-calculations-9"],
    ["4 × 1-1/2 round/octagonal", "14", 7, "EC&M, ecmweb.com/content/code-calculations-9"],
    ["4 × 1-1/4 square", "12", 8, "EC&M, ecmweb.com/whats-wrong-here-136"],
    ["3 × 2 × 1-1/2 device", "12", 3, "ncertpoint.com how-wide-is-single-gang-box"],
    ["3 × 2 × 2 device", "12", 4, "ncertpoint.com how-wide-is-single-gang-box"],
    ["3 × 2 × 2-1/2 device", "12", 5, "ncertpoint.com how-wide-is-single-gang-box"],
    ["4 × 2-1/8 square", "16", 17, "SDM Magazine, sdmmag.com/articles/95557"],
    ["3 × 2 × 3-1/2 device", "12", 8, "count by hand: 18 in³ / 2.25 in³"],
  ] as const)("%s holds %s AWG: %d (%s)", (box, size, count, _source) => expect(holds(box, size)).toBe(count));
  it.each([
    ["4 × 1-1/2 round/octagonal", [10, 8, 7, 6, 6, 5, 3]],
    ["4 × 2-1/8 round/octagonal", [14, 12, 10, 9, 8, 7, 4]],
    ["4 × 1-1/4 square", [12, 10, 9, 8, 7, 6, 3]],
    ["4 × 2-1/8 square", [20, 17, 15, 13, 12, 10, 6]],
    ["4-11/16 × 1-1/4 square", [17, 14, 12, 11, 10, 8, 5]],
    ["4-11/16 × 1-1/2 square", [19, 16, 14, 13, 11, 9, 5]],
    ["4-11/16 × 2-1/8 square", [28, 24, 21, 18, 16, 14, 8]],
    ["3 × 2 × 2-1/4 device", [7, 6, 5, 4, 4, 3, 2]],
  ] as const)("%s holds 18 to 6 AWG: %j (synthmind.com Electrical_Box_Sizing_Guide)", (box, counts) =>
    expect(["18", "16", "14", "12", "10", "8", "6"].map((size) => holds(box, size))).toEqual(counts),
  );
  it("the next better box: a quarter more than needed, the least that has it (common practice, no source)", () => {
    const next = (neededIn3: number) => nextBetterBox({ id: "x", neededIn3, kinds: ["square"], edition });
    expect(next(16.79).box).toBe("4 × 1-1/2 square");
    expect(next(16.8).box).toBe("4 × 1-1/2 square");
    expect(next(16.81).box).toBe("4-11/16 × 1-1/4 square");
    expect(next(33.6).box).toBe("4-11/16 × 2-1/8 square");
    expect(next(33.61)).toMatchObject({ box: null, volume: null });
    expect(pencil(next(16.8).wanted)).toBeCloseTo(Number(next(16.8).wanted.value), 4);
    expect(nextBetterBox({ id: "x", neededIn3: 14, kinds: ["device"], edition }).box).toBe("3 × 2 × 3-1/2 device");
  });
  it("more to hold never takes a smaller box", () =>
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 40 }), fc.integer({ min: 0, max: 10 }), (needed, more) => {
        const of = (n: number) => Number(nextBetterBox({ id: "x", neededIn3: n, edition }).volume?.value ?? 1000);
        expect(of(needed + more)).toBeGreaterThanOrEqual(of(needed));
        expect(of(needed)).toBeGreaterThanOrEqual(needed * 1.25);
      }),
      { numRuns: 60 },
    ));
});

describe("pull boxes, 314.28(A)", () => {
  it("goes by dimensions from 4 AWG up (EC&M, ecmweb.com article 20904411)", () => {
    expect(isPullBox(["6", "8"])).toBe(false);
    expect(isPullBox(["8", "4"])).toBe(true);
    expect(isPullBox(["1/0"])).toBe(true);
    expect(isPullBox([])).toBe(false);
  });
  it("pb-001: straight pull, 2 in: 16 in (EC&M, ecmweb.com/print/content/quizzes-code-15)", () =>
    expect(straightPull({ id: "x", tradeSizes: ["2", "2"], edition }).value).toBe("16"));
  it("straight pull, 2-1/2, 2 and 1-1/2 in: 20 in, the others do not count (EC&M, ecmweb.com/print/content/quizzes-code-15, question 2)", () =>
    expect(straightPull({ id: "x", tradeSizes: ["2", "2-1/2", "1-1/2"], edition }).value).toBe("20"));
  it("pb-003: angle pull, 3 and 2 in on a wall: 20 in to the opposite wall, 18 in between entries with the same conductors (eHow, ehow.com/how_7589496)", () => {
    const across = anglePull({ id: "x", row: ["2", "3"], edition });
    expect(across.value).toBe("20");
    expect(pencil(across)).toBe(20);
    expect(entryDistance({ id: "x", pair: ["3", "2"], edition }).value).toBe("18");
  });
  it("pb-005: 4 and 6 in entries with the same conductors: 36 in apart (JeopardyLabs, honors-end-of-year-final-part-1)", () =>
    expect(entryDistance({ id: "x", pair: ["4", "6"], edition }).value).toBe("36"));
  it("two 2 in entries with the same conductors: 12 in, nothing added (tobycarveryshoecharms.com how-often-should-conduit-be-supported)", () =>
    expect(entryDistance({ id: "x", pair: ["2", "2"], edition }).value).toBe("12"));
  it("two raceways of one size in a row: six times one and the other once (314.28(A)(2))", () =>
    expect(anglePull({ id: "x", row: ["2", "2"], edition }).value).toBe("14"));

  const entry = (id: string, wall: BoxEntry["wall"], tradeSize: AnyTradeSize, row = 1): BoxEntry => ({ id, wall, tradeSize, row });
  const box = (entries: BoxEntry[], pulls: BoxPull[], backConductor?: Size) =>
    pullBoxSize({ id: "b", entries, pulls, edition, ...(backConductor === undefined ? {} : { backConductor }) });
  it("a straight pull sets one side alone", () => {
    const found = box([entry("a", "left", "2"), entry("b", "right", "2")], [{ from: "a", to: "b" }]);
    expect([found.width?.value, found.height, found.depth, found.distances]).toEqual(["16", null, null, []]);
  });
  it("spliced, the same raceways need six times across, and no distance between them", () => {
    const found = box([entry("a", "left", "2"), entry("b", "right", "2")], [{ from: "a", to: "b", spliced: true }]);
    expect([found.width?.value, found.height, found.distances.length]).toEqual(["12", null, 0]);
  });
  it("an angle pull sets both sides and the distance", () => {
    const found = box(
      [entry("a", "left", "3"), entry("b", "bottom", "3"), entry("c", "left", "2"), entry("d", "bottom", "2")],
      [
        { from: "a", to: "b" },
        { from: "c", to: "d" },
      ],
    );
    expect([found.width?.value, found.height?.value]).toEqual(["20", "20"]);
    expect(found.distances.map((d) => d.value)).toEqual(["18", "12"]);
  });
  it("a U pull counts both entries of its wall", () => {
    const found = box([entry("a", "top", "2"), entry("b", "top", "2")], [{ from: "a", to: "b" }]);
    expect([found.width, found.height?.value, found.distances[0]?.value]).toEqual([null, "14", "12"]);
  });
  it("rows are counted apart and the largest governs; a straight pull with an angle pull takes the greater", () => {
    const rows = box(
      [entry("a", "left", "3", 1), entry("c", "left", "2", 2), entry("b", "bottom", "3"), entry("d", "bottom", "2")],
      [
        { from: "a", to: "b" },
        { from: "c", to: "d" },
      ],
    );
    expect([rows.width?.value, rows.height?.value]).toEqual(["18", "20"]);
    expect(pencil(rows.width!)).toBe(18);
    const mixed = box(
      [entry("a", "left", "3"), entry("b", "right", "3"), entry("c", "left", "2"), entry("d", "bottom", "2")],
      [
        { from: "a", to: "b" },
        { from: "c", to: "d" },
      ],
    );
    expect([mixed.width?.value, mixed.height?.value]).toEqual(["24", "12"]);
  });
  it("an entry in the back looks to its cover by Table 312.6(A), one wire a terminal: 4/0 is 4 in (Mike Holt Forums t=149056)", () => {
    expect(backEntryDepth({ id: "x", largest: "4/0", edition })!.value).toBe("4");
    expect(backEntryDepth({ id: "x", largest: "10", edition })).toBeNull();
    const found = box([entry("a", "back", "2"), entry("b", "bottom", "2")], [{ from: "a", to: "b" }], "4/0");
    expect([found.width, found.height?.value, found.depth?.value]).toEqual([null, "12", "4"]);
  });
  it("a smaller box serves only by its marking, 314.28(A)(3)", () => {
    const conductors = { count: 3, largest: "2" } as const;
    expect(markedForFewer({ marking: null, conductors })).toBe(false);
    expect(markedForFewer({ marking: { count: 3, largest: "2" }, conductors })).toBe(true);
    expect(markedForFewer({ marking: { count: 2, largest: "1/0" }, conductors })).toBe(false);
    expect(markedForFewer({ marking: { count: 4, largest: "3" }, conductors })).toBe(false);
  });
  it("a pull to no entry is a mistake of the caller", () => expect(() => box([entry("a", "left", "2")], [{ from: "a", to: "z" }])).toThrow(RangeError));
  it("one more raceway in the row, or a larger one, never makes a smaller box", () =>
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...ALL_TRADE_SIZES), { minLength: 1, maxLength: 5 }), fc.constantFrom(...ALL_TRADE_SIZES), (row, more) => {
        const [first, ...rest] = row as [AnyTradeSize, ...AnyTradeSize[]];
        const angle = (...extra: AnyTradeSize[]) => Number(anglePull({ id: "x", row: [first, ...rest, ...extra], edition }).value);
        const straight = (...extra: AnyTradeSize[]) => Number(straightPull({ id: "x", tradeSizes: [first, ...rest, ...extra], edition }).value);
        expect(angle(more)).toBeGreaterThanOrEqual(angle() + Number(TRADE_INCHES[more]));
        expect(straight(more)).toBeGreaterThanOrEqual(straight());
      }),
      { numRuns: 80 },
    ));
});

describe("wire-bending space, 312.6(B)", () => {
  const of = (size: Size, wiresPerTerminal: 1 | 2, opposite: boolean) => bendingSpace({ id: "x", size, wiresPerTerminal, opposite, edition })?.value;
  it("4/0, two a terminal, through the wall they face: 7-1/2 in (EC&M, ecmweb.com/nec/code-quiz-16)", () => expect(of("4/0", 2, true)).toBe("7.5"));
  it("4/0 alone: 7 in through the wall it faces, 4 in otherwise; 2/0 3-1/2 in (Mike Holt Forums, showthread t=149056)", () => {
    expect([of("4/0", 1, true), of("4/0", 1, false), of("2/0", 1, false)]).toEqual(["7", "4", "3.5"]);
  });
  it("names no figure for 14 to 10 AWG; begins at 8 (studylib.net/doc/18090336)", () => {
    expect([of("10", 1, false), of("8", 1, false), of("6", 1, true), of("4", 1, true)]).toEqual([undefined, "1.5", "2", "3"]);
  });
});
