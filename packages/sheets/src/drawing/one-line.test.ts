import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { LETTER_SIZE } from "./lettering.js";
import { cornersOf, type Drawing, type Mark, type Point, type TextMark } from "./marks.js";
import { layOneLine } from "./one-line-layout.js";
import type { Bus, Row, Supply } from "./one-line-tree.js";

const ROOM = { width: 522, height: 572 };
const outlet = (words: readonly string[], tags = 3): Row => ({
  breaker: "50 A, 2P, GFCI, space 13/15",
  fresh: true,
  sizes: ["W1, W3: 3 × 6 AWG Cu THWN-2, G 10 AWG, 1 in PVC-80", "W2: 3 × 6 AWG Cu, G 10 AWG, NM-B"],
  way: Array.from({ length: tags }, (_, i) => ({ is: i % 2 === 0 ? ("conductors" as const) : ("box" as const), tag: `W${i + 1}` })),
  end: { is: "outlet", words },
});
const bus = (rows: readonly Row[], name = "Panel"): Bus => ({
  name,
  words: ["bus 100 A, main 60 A", "neutral isolated"],
  fresh: true,
  earth: { bar: "G", words: "equipment ground bar" },
  rows,
});
const feeder = (to: Bus, tags = 3): Row => ({ ...outlet([], tags), end: { is: "panel", bus: to } });
const supply = (rows: readonly Row[]): Supply => ({
  stations: [
    { is: "utility", words: ["Utility supply, 120/240 V", "available fault current 8.2 kA"] },
    { is: "meter", words: ["Meter (E)"] },
    { is: "main", words: ["Main breaker 150 A (E)"] },
  ],
  bus: bus(rows),
});

const texts = (drawing: Drawing) => drawing.marks.filter((mark): mark is TextMark => mark.is === "text");
const pointsOf = (mark: Mark): readonly Point[] =>
  mark.is === "text"
    ? cornersOf(mark)
    : mark.is === "circle"
      ? [
          [mark.at[0] - mark.r, mark.at[1] - mark.r],
          [mark.at[0] + mark.r, mark.at[1] + mark.r],
        ]
      : mark.points;
const extent = (mark: Mark) => {
  const points = pointsOf(mark);
  const xs = points.map((p) => p[0]);
  const ys = points.map((p) => p[1]);
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
};

function faults(drawings: readonly Drawing[]): readonly string[] {
  return drawings.flatMap((drawing) => {
    const boxes = texts(drawing).map((mark) => ({ words: mark.text, ...extent(mark) }));
    const overlaps = boxes.flatMap((a, i) =>
      boxes
        .slice(i + 1)
        .filter((b) => a.left < b.right - 0.5 && b.left < a.right - 0.5 && a.top < b.bottom - 3 && b.top < a.bottom - 3)
        .map((b) => `"${a.words}" meets "${b.words}"`),
    );
    const outside = drawing.marks
      .filter((mark) => {
        const at = extent(mark);
        return at.left < -0.5 || at.right > drawing.width + 0.5 || at.top < -3 || at.bottom > drawing.height + 0.5;
      })
      .map((mark) => `outside the frame ${drawing.width} × ${drawing.height}: ${JSON.stringify(mark)}`);
    const shapes = drawing.marks.flatMap((mark) =>
      mark.is === "circle" || (mark.is === "path" && (mark.closed || mark.points.length === 2)) ? [extent(mark)] : [],
    );
    const struck = boxes.flatMap((a) =>
      shapes
        .filter((b) => a.left < b.right && b.left < a.right && a.top + 2 < b.bottom && b.top < a.bottom - 3)
        .filter((b) => !(a.left >= b.left - 4 && a.right <= b.right + 4 && a.top >= b.top - 1 && a.bottom <= b.bottom + 1))
        .map(() => `"${a.words}" is struck by a line`),
    );
    return [...overlaps, ...outside, ...struck];
  });
}
const straight = (drawing: Drawing) =>
  drawing.marks.flatMap((mark) => (mark.is === "path" && mark.points.length === 2 && mark.weight !== "fine" ? [mark.points as readonly [Point, Point]] : []));

/** A long line across and a long line down that cross inside both: two wires that would seem joined. */
function crossings(drawing: Drawing): number {
  const across = straight(drawing).filter(([a, b]) => a[1] === b[1] && Math.abs(a[0] - b[0]) > 7);
  const down = straight(drawing).filter(([a, b]) => a[0] === b[0] && Math.abs(a[1] - b[1]) > 16);
  return across.filter(([a, b]) =>
    down.some(([c, d]) => {
      const [left, right] = [Math.min(a[0], b[0]), Math.max(a[0], b[0])];
      const [top, bottom] = [Math.min(c[1], d[1]), Math.max(c[1], d[1])];
      return c[0] > left + 0.5 && c[0] < right - 0.5 && a[1] > top + 0.5 && a[1] < bottom - 0.5;
    }),
  ).length;
}

describe("one-line diagram", () => {
  it("letters are 1/8 in: capitals are at least 0.65 of the type size", () => expect(LETTER_SIZE * 0.65).toBeGreaterThanOrEqual(9));

  it.each(["Outlet", "W".repeat(60), "a long name of a place ".repeat(8).trim()])("keeps words apart and on the paper, whatever their length", (name) => {
    expect(faults(layOneLine(supply([outlet([name, "50 A, 240 V, 4 wires", "drop 2.1 % to here"]), outlet([name], 12)]), ROOM))).toEqual([]);
  });

  it("a name of many lines ends in dots on its second, and its amperes and its drop still stand", () => {
    const said = layOneLine(supply([outlet(["a long name of a place ".repeat(8).trim(), "50 A, 240 V, 4 wires", "drop 2.1 % to here"])]), ROOM).flatMap(texts);
    expect(said.map((t) => t.text)).toEqual(expect.arrayContaining(["50 A, 240 V, 4 wires", "drop 2.1 % to here"]));
    expect(said.filter((t) => t.text.endsWith("…"))).toHaveLength(1);
    expect(said.filter((t) => t.bold && t.text.includes("place"))).toHaveLength(2);
  });

  it("hangs a fed panel at the end of its feeder on the same drawing where there is room", () => {
    const one = { ...outlet(["A"], 1), sizes: ["W4: 3 × 8 AWG Cu THWN-2, G 10 AWG, 3/4 in EMT"] };
    const made = layOneLine(supply([feeder(bus([one], "Workshop"), 3)]), ROOM);
    expect(made).toHaveLength(1);
    expect(texts(made[0]!).some((t) => t.text === "Workshop")).toBe(true);
  });

  it("tells the wiring of each stretch under its line, whole", () => {
    const row = outlet(["A", "50 A, 240 V, 4 wires", "drop 2.1 % to here"]);
    const said = layOneLine(supply([row]), ROOM).flatMap(texts);
    const joined = said.map((t) => t.text).join(" ");
    for (const size of row.sizes) expect(joined).toContain(size);
  });

  it.each([200, 330, 345])("keeps its words off its legend in a room only %s high", (height) => {
    const row = {
      ...outlet(["A", "50 A, 240 V, 4 wires", "drop 2.1 % to here"]),
      sizes: Array.from({ length: 5 }, (_, i) => `W${i}: 3 × 6 AWG Cu THWN-2, G 10 AWG, 1-1/4 in PVC-80`),
    };
    expect(faults(layOneLine(supply([row]), { width: 522, height }))).toEqual([]);
  });

  it("hangs the earth on a bar of the panel, never on the bus, and once though the bus goes on", () => {
    const made = layOneLine(supply(Array.from({ length: 12 }, (_, i) => outlet([`Outlet ${i + 1}`]))), ROOM);
    expect(made.length).toBeGreaterThan(1);
    // The longest of the three strokes of an earth is 22 wide.
    const earths = made.map((drawing) => straight(drawing).filter(([a, b]) => a[1] === b[1] && Math.abs(b[0] - a[0]) === 22));
    expect(earths.map((found) => found.length)).toEqual(made.map((_, i) => (i === 0 ? 1 : 0)));
    for (const drawing of made) {
      const buses = straight(drawing).filter(([a, b]) => a[0] === 16 && b[0] === 16 && Math.abs(a[1] - b[1]) > 40);
      for (const [a, b] of earths[0]!) expect(buses.some(([c]) => c[0] >= Math.min(a[0], b[0]) && c[0] <= Math.max(a[0], b[0]))).toBe(false);
    }
    expect(made.slice(1).every((drawing) => texts(drawing).some((t) => t.text === "Panel, continued"))).toBe(true);
  });

  it("goes on at a match line that both drawings name, and loses no run of thirty", () => {
    const made = layOneLine(supply(Array.from({ length: 30 }, (_, i) => outlet([`Outlet number ${i + 1} of all`]))), ROOM);
    const said = made.flatMap((drawing) => texts(drawing).map((t) => t.text));
    for (let i = 1; i <= 30; i++) expect(said.join(" ")).toContain(`number ${i} of`);
    const left = said.filter((t) => t.startsWith("More runs at match line")).map((t) => t.at(-1));
    const taken = said.filter((t) => t.startsWith("From match line")).map((t) => t.at(-1));
    expect(left.length).toBeGreaterThan(0);
    expect(taken).toEqual(left);
    expect(faults(made)).toEqual([]);
  });

  it("names a twenty-seventh match line unlike the others", () => {
    const made = layOneLine(supply(Array.from({ length: 200 }, (_, i) => outlet([`Outlet ${i + 1}`]))), ROOM);
    const names = made.flatMap((drawing) => texts(drawing).flatMap((t) => (t.text.startsWith("From match line") ? [t.text.slice(16)] : [])));
    expect(names).toContain("AA");
    expect(names.every((name) => /^[A-Z]+$/.test(name))).toBe(true);
    expect(new Set(names).size).toBe(names.length);
  });

  const leaf = fc
    .record({ n: fc.string({ minLength: 1, maxLength: 60 }), tags: fc.integer({ min: 1, max: 10 }) })
    .map(({ n, tags }) => outlet([n, "50 A, 240 V, 4 wires", "drop 2.1 % to here"], tags));
  const anyRow: fc.Arbitrary<Row> = fc.letrec<{ row: Row }>((tie) => ({
    row: fc.oneof(
      { depthSize: "small", withCrossShrink: true },
      leaf,
      fc
        .tuple(fc.array(tie("row"), { maxLength: 6 }), fc.integer({ min: 1, max: 6 }), fc.string({ maxLength: 40 }))
        .map(([rows, tags, name]) => feeder(bus(rows, name), tags)),
    ),
  })).row;

  it("any tree: no two labels meet, nothing leaves the frame, no wires cross", () => {
    fc.assert(
      fc.property(fc.array(anyRow, { minLength: 1, maxLength: 30 }), (rows) => {
        const made = layOneLine(supply(rows), ROOM);
        expect(faults(made)).toEqual([]);
        expect(made.reduce((sum, drawing) => sum + crossings(drawing), 0)).toBe(0);
      }),
      { numRuns: 300 },
    );
  });
});
