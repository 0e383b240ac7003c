import { describe, expect, it } from "vitest";
import { drawBoxSection } from "./box-section.js";
import { packCircles } from "./circle-packing.js";
import { drawLoadBar } from "./load-bar.js";
import { cornersOf, type Drawing, type Mark, type Point, type TextMark, WEIGHTS } from "./marks.js";
import { svgOfDrawing } from "./marks-svg.js";
import { drawMountingElevation } from "./mounting-elevation.js";
import { drawPanelElevation, type PanelPosition } from "./panel-elevation.js";
import { distance, hatchLines, meet, pairs } from "./plane-geometry.js";
import { drawRacewaySection } from "./raceway-section.js";
import { drawSitePlan, type SitePlanInput, setbacksOf } from "./site-plan.js";
import { FEET_PER_INCH } from "./site-scale.js";
import { drawTrenchSection } from "./trench-section.js";
import { drawVoltageProfile } from "./voltage-profile.js";

/** Repeatable numbers from 0 to 1 (mulberry32). */
function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}
const RUNS = 60;
const seeds = Array.from({ length: RUNS }, (_, i) => i + 1);
const letteringOf = (d: Drawing) => d.marks.filter((m): m is TextMark => m.is === "text");
const cornersOfMark = (m: Mark): readonly Point[] =>
  m.is === "text"
    ? cornersOf(m)
    : m.is === "circle"
      ? [
          [m.at[0] - m.r, m.at[1] - m.r],
          [m.at[0] + m.r, m.at[1] + m.r],
        ]
      : m.points;

/** What every drawing owes: no words meet, nothing leaves the frame, nothing is finer than 0.25 mm. */
function expectSound(d: Drawing) {
  const words = letteringOf(d);
  for (const [i, a] of words.entries()) {
    for (const b of words.slice(i + 1)) expect(meet(cornersOf(a), cornersOf(b)), `"${a.text}" meets "${b.text}" in ${d.title}`).toBe(false);
  }
  for (const mark of d.marks) {
    for (const [x, y] of cornersOfMark(mark)) {
      const inside = x >= -0.01 && x <= d.width + 0.01 && y >= -0.01 && y <= d.height + 0.01;
      expect(inside, `${JSON.stringify(mark)} leaves ${d.width} × ${d.height} at ${x}, ${y}`).toBe(true);
    }
  }
  expect(d.title).not.toBe("");
  expect(d.alt.length).toBeGreaterThan(d.title.length);
  expect(svgOfDrawing(d, "x")).not.toMatch(/NaN|Infinity|undefined/);
}
const says = (d: Drawing, words: string) => letteringOf(d).some((m) => m.text.includes(words));

const conductor = (tag: string, diameter_in: number, role: "hot" | "neutral" | "ground") => ({ tag, words: `${tag} wire`, diameter_in, role });

describe("plane geometry", () => {
  it("knows meeting from touching and from being apart", () => {
    const square = (x: number): Point[] => [
      [x, 0],
      [x + 2, 0],
      [x + 2, 2],
      [x, 2],
    ];
    expect(meet(square(0), square(1.9))).toBe(true);
    expect(meet(square(0), square(2))).toBe(false);
    expect(meet(square(0), square(2.1))).toBe(false);
    expect(
      meet(square(0), [
        [-1, 1],
        [3, 1],
      ]),
    ).toBe(true);
    expect(
      meet(square(0), [
        [-1, 3],
        [3, 3],
      ]),
    ).toBe(false);
    expect(
      meet(square(0), [
        [4.5, 0],
        [0, 4.5],
      ]),
    ).toBe(false);
  });

  it("hatches only inside, an L's notch left out", () => {
    const ell: Point[] = [
      [0, 0],
      [10, 0],
      [10, 4],
      [4, 4],
      [4, 10],
      [0, 10],
    ];
    const lines = hatchLines(ell, 0, 1);
    expect(lines.length).toBeGreaterThan(5);
    for (const [a, b] of lines) expect(Math.max(a[0], b[0])).toBeCloseTo(a[1] < 4 ? 10 : 4, 6);
  });

  it("packs circles that neither meet nor leave the round, or leaves them over", () => {
    for (const seed of seeds) {
      const next = seeded(seed);
      const radii = Array.from({ length: 1 + Math.floor(next() * 12) }, () => 0.05 + next() * 0.2);
      const { laid, leftOver } = packCircles(radii, 0.5);
      expect(laid.length + leftOver.length).toBe(radii.length);
      for (const [i, a] of laid.entries()) {
        expect(Math.hypot(...a.at) + a.r).toBeLessThanOrEqual(0.5 + 1e-5);
        for (const b of laid.slice(i + 1)) expect(distance(a.at, b.at)).toBeGreaterThanOrEqual(a.r + b.r - 1e-5);
      }
    }
    expect(packCircles([0.6], 0.5)).toEqual({ laid: [], leftOver: [0] });
    // Two equal circles just fit a round of twice their radius; three do not.
    expect(packCircles([0.25, 0.25], 0.5).leftOver).toEqual([]);
    expect(packCircles([0.25, 0.26], 0.5).leftOver).toEqual([0]);
    expect(packCircles([0.25, 0.25, 0.25], 0.5).leftOver).toEqual([2]);
  });

  it("keeps every line at 0.25 mm or more", () => {
    for (const weight of Object.values(WEIGHTS)) expect((weight / 72) * 25.4).toBeGreaterThanOrEqual(0.25);
  });
});

const plain: SitePlanInput = {
  lot: [
    [0, 0],
    [80, 0],
    [80, 120],
    [0, 120],
  ],
  outlines: [
    {
      kind: "house",
      name: "House",
      points: [
        [15, 45],
        [55, 45],
        [55, 90],
        [15, 90],
      ],
    },
  ],
  points: [
    { kind: "meter", name: "Meter (E)", at: [55, 50] },
    { kind: "outlet", name: "RV outlet", at: [13, 30] },
  ],
  routes: [
    {
      circuit: "rv",
      segment: "Yard trench",
      in_trench: true,
      points: [
        [16, 45],
        [16, 30],
        [13, 30],
      ],
      rises_ft: 6,
    },
  ],
  overhead: [],
  north_degrees: 20,
  stated: [{ circuit: "rv", segment: "Yard trench", length_ft: 20 }],
};

describe("site plan", () => {
  it("draws a foot as long on paper as its scale says", () => {
    const { drawing, scale } = drawSitePlan(plain);
    expectSound(drawing);
    const lot = drawing.marks.find((m) => m.is === "path" && m.closed && m.dash === "lot");
    const sides = lot?.is === "path" ? pairs(lot.points, true).map(([a, b]) => (distance(a, b) / 72) * scale) : [];
    expect(sides.map((s) => Number(s.toFixed(6)))).toEqual([80, 120, 80, 120]);
    // 120 ft in the height there is: 20 ft to the inch would want 6 in.
    expect(scale).toBe(30);
  });

  // Two rows of legend, scale bar and a line of note leave 229 pt of the 400 in height, and 472 in width. 170 ft up the page: at 50 ft to
  // the inch 244.8 pt, too many, at 60 204; across it at 30 408 by 192. 120 ft: up at 40 216; across at 20 288 by the 80 ft, so 30: no twofold.
  it.each([
    [80, 170, 30, 110],
    [80, 120, 40, 20],
    [170, 80, 30, 20],
  ])("a lot of %s ft by %s ft is drawn at %s ft to the inch, north at %s° of its page", (wide, deep, expected, north) => {
    const lot = [
      [0, 0],
      [wide, 0],
      [wide, deep],
      [0, deep],
    ] as const;
    const { drawing, scale, setbacks } = drawSitePlan({ ...plain, lot, scale_note: "Measured.", frame: { width: 522, height: 400 } });
    expectSound(drawing);
    expect(scale).toBe(expected);
    const outline = drawing.marks.find((m) => m.is === "path" && m.closed && m.dash === "lot");
    const [first] = outline?.is === "path" ? pairs(outline.points, true) : [];
    const sides =
      first === undefined ? [] : [Math.abs(first[1][0] - first[0][0]), Math.abs(first[1][1] - first[0][1])].map((s) => Number(((s / 72) * scale).toFixed(6)));
    expect(sides).toEqual(north === 110 ? [0, wide] : [wide, 0]);
    // The needle's tip from the middle of its ring.
    const ring = drawing.marks.findLast((m) => m.is === "circle" && m.r === 10);
    const needle = drawing.marks.find((m) => m.is === "path" && m.closed && m.fill === "black" && m.points.length === 3);
    const [tip, at] = [needle?.is === "path" ? needle.points[0]! : [0, 0], ring?.is === "circle" ? ring.at : [0, 0]];
    expect((Math.atan2(tip[0] - at[0], at[1] - tip[1]) * 180) / Math.PI).toBeCloseTo(north, 6);
    expect(setbacks).toEqual([{ name: "RV outlet", distance_ft: 13, from: [13, 30], to: [0, 30] }]);
  });

  it("dimensions each leg of the trench, the segment and the way to the lot line", () => {
    const { drawing, setbacks } = drawSitePlan(plain);
    for (const words of ["15 ft", "3 ft", "18 ft trench", "13 ft to lot line", "1 in = 30 ft"]) expect(says(drawing, words), words).toBe(true);
    expect(setbacks).toEqual([{ name: "RV outlet", distance_ft: 13, from: [13, 30], to: [0, 30] }]);
    expect(
      setbacksOf({
        lot: [
          [0, 0],
          [3, 0],
          [0, 4],
        ],
        points: [{ kind: "outlet", name: "O", at: [0, 0] }],
      })[0]?.distance_ft,
    ).toBe(0);
    // The round inside a 3-4-5 triangle has its centre at 1, 1 and a radius of 1 (elementary geometry).
    expect(
      setbacksOf({
        lot: [
          [0, 0],
          [3, 0],
          [0, 4],
        ],
        points: [{ kind: "outlet", name: "O", at: [1, 1] }],
      })[0]?.distance_ft,
    ).toBeCloseTo(1, 9);
  });

  it.each([
    [22.9, "stated-shorter"],
    [23, "agrees"],
    [24, "agrees"],
    [34, "agrees"],
    [34.1, "stated-longer"],
  ] as const)("compares 18 ft drawn and 6 ft of rises with %s ft stated: %s", (length_ft, verdict) => {
    const [row] = drawSitePlan({ ...plain, stated: [{ circuit: "rv", segment: "Yard trench", length_ft }] }).comparison;
    expect(row).toMatchObject({ drawn_ft: 18, rises_ft: 6, stated_ft: length_ft, verdict });
  });

  it("tells of routes not stated and segments not drawn", () => {
    const { comparison } = drawSitePlan({ ...plain, stated: [{ circuit: "rv", segment: "Attic", length_ft: 30 }] });
    expect(comparison.map((c) => [c.segment, c.verdict])).toEqual([
      ["Attic", "not-drawn"],
      ["Yard trench", "not-stated"],
    ]);
  });

  it("keeps a strip clear for a stamp, and refuses a frame with no room", () => {
    const wide = { ...plain, frame: { width: 1080, height: 700 }, clear_top: 270 };
    const { drawing } = drawSitePlan(wide);
    expectSound(drawing);
    for (const mark of drawing.marks) for (const [, y] of cornersOfMark(mark)) expect(y).toBeGreaterThan(270);
    expect(() => drawSitePlan({ ...plain, clear_top: 400 })).toThrow(RangeError);
  });

  it("cuts names of many words to what fits", () => {
    const long = "A name that goes on and on without any need for it at all ".repeat(6).trim();
    const { drawing } = drawSitePlan({
      ...plain,
      scale_note: long,
      outlines: plain.outlines.map((o) => ({ ...o, name: long })),
      points: plain.points.map((p) => ({ ...p, name: long })),
      routes: plain.routes.map((r) => ({ ...r, segment: long })),
    });
    expectSound(drawing);
  });

  it("is the same every time", () => {
    expect(drawSitePlan(plain)).toEqual(drawSitePlan(plain));
  });

  it.each(seeds)("keeps its words apart and inside the frame on invented site %i", (seed) => {
    const next = seeded(seed);
    const between = (a: number, b: number) => Math.round((a + next() * (b - a)) * 10) / 10;
    const [wide, deep] = [between(30, seed % 7 === 0 ? 4000 : 250), between(30, seed % 5 === 0 ? 3000 : 300)];
    const place = (): Point => [between(0, wide), between(0, deep)];
    const kinds = ["meter", "panel", "outlet", "gas", "water", "septic", "pole", "well", "hydrant", "disconnect"] as const;
    const outlines = (["house", "garage", "drive", "pool", "other"] as const).map((kind) => {
      const [x, y] = place();
      const [w, h] = [between(4, wide / 2), between(4, deep / 2)];
      return {
        kind,
        name: `${kind} with a name of some length`,
        points: [
          [x, y],
          [x + w, y],
          [x + w, y + h],
          [x, y + h],
        ] as Point[],
      };
    });
    const segments = Array.from({ length: 1 + Math.floor(next() * 5) }, (_, i) => `Segment ${i + 1} by fence`);
    const { drawing, unplaced, scale } = drawSitePlan({
      lot: [
        [0, 0],
        [wide, 0],
        [wide, deep],
        [0, deep],
      ],
      outlines,
      points: kinds.slice(0, 2 + Math.floor(next() * 9)).map((kind) => ({ kind, name: `${kind} no. 1`, at: place() })),
      routes: segments.map((segment, i) => ({
        circuit: "c",
        segment,
        in_trench: i % 2 === 0,
        points: Array.from({ length: 2 + Math.floor(next() * 3) }, place),
      })),
      overhead: next() < 0.5 ? [[place(), place()]] : [],
      north_degrees: between(-180, 180),
      ...(next() < 0.5 ? { scale_note: "measured by tape from the corner of the house; not a survey and not to be relied on for the lot lines" } : {}),
      stated: segments.map((segment) => ({ circuit: "c", segment, length_ft: 50 })),
    });
    expectSound(drawing);
    expect(FEET_PER_INCH).toContain(scale);
    const printed = letteringOf(drawing)
      .map((m) => m.text)
      .join(" ");
    for (const segment of segments) expect(`${printed} ${unplaced.join(" ")}`, segment).toContain(segment);
  });

  it("gives back the words it had no room for", () => {
    const crowd = Array.from({ length: 100 }, (_, i) => ({
      kind: "water" as const,
      name: `Valve number ${i + 1}`,
      at: [(i % 20) * 4, Math.floor(i / 20) * 6] as const,
    }));
    const { drawing, unplaced } = drawSitePlan({ ...plain, points: crowd });
    expectSound(drawing);
    expect(unplaced.length).toBeGreaterThan(0);
    for (const { name } of crowd) expect(unplaced.includes(name) || letteringOf(drawing).some((m) => m.text === name), name).toBe(true);
  });
});

describe("sections and elevations", () => {
  const wires = [conductor("L1", 0.254, "hot"), conductor("L2", 0.254, "hot"), conductor("N", 0.254, "neutral"), conductor("G", 0.216, "ground")];

  it.each(seeds)("draws trench %i with depth, cover and width in one scale", (seed) => {
    const next = seeded(seed);
    const outside_in = 0.84 + next() * 3;
    const cover_in = 6 + Math.round(next() * 42);
    const bedding_in = seed % 3 === 0 ? 0 : Math.round(next() * 6);
    const depth_in = Math.round((cover_in + outside_in + bedding_in) * 10) / 10;
    const width_in = 4 + Math.round(next() * 20);
    const raceway = seed % 2 === 0;
    const d = drawTrenchSection({
      cover_in,
      depth_in,
      width_in,
      bedding_in,
      ...(seed % 4 === 0 ? {} : { ribbon_depth_in: cover_in / 2 }),
      surface: "lawn",
      wiring: raceway
        ? { kind: "raceway", name: "PVC-40", outside_in, inside_in: outside_in * 0.8, conductors: wires }
        : { kind: "cable", name: "6-3 UF-B", width_in: 0.95, height_in: 0.42, conductors: wires },
    });
    expectSound(d);
    const trench = d.marks.find((m) => m.is === "path" && m.weight === "medium" && !m.closed && m.points.length === 4);
    const walls = trench?.is === "path" ? trench.points : [];
    const perInch = distance(walls[0]!, walls[1]!) / depth_in;
    expect(distance(walls[1]!, walls[2]!)).toBeCloseTo(width_in * perInch, 6);
    expect(says(d, `${depth_in} in`)).toBe(true);
    expect(says(d, `${cover_in} in cover`)).toBe(true);
    expect(says(d, `${width_in} in`)).toBe(true);
    expect(d.height).toBeLessThanOrEqual(572);
    if (raceway) {
      // The top of the raceway lies at the stated cover below grade.
      const pipe = d.marks.find((m) => m.is === "circle" && m.weight === "medium");
      expect(pipe?.is === "circle" ? pipe.at[1] - pipe.r - walls[0]![1] : null).toBeCloseTo(cover_in * perInch, 6);
    }
    expect(says(d, "warning ribbon")).toBe(seed % 4 !== 0);
  });

  it.each(seeds)("draws raceway %i with its conductors to scale inside", (seed) => {
    const next = seeded(seed);
    const conductors = Array.from({ length: 1 + Math.floor(next() * 8) }, (_, i) => conductor(`L${i + 1}`, 0.1 + next() * 0.3, "hot"));
    const d = drawRacewaySection({ name: "1-1/4 in EMT", inside_in: 1.38, outside_in: 1.51, conductors, fill_percent: 31.25, limit_percent: 40 });
    expectSound(d);
    expect(says(d, "Fill 31.3 % of 40 % allowed") || says(d, "Fill 31.2 % of 40 % allowed")).toBe(true);
    expect(says(d, "TOO FULL")).toBe(false);
    const rounds = d.marks.filter((m) => m.is === "circle" && m.weight === "medium").map((m) => (m.is === "circle" ? m.r : 0));
    const perInch = rounds[0]! / (1.51 / 2);
    const drawn = rounds
      .slice(2)
      .map((r) => (2 * r) / perInch)
      .sort();
    const given = conductors.map((c) => c.diameter_in).sort();
    if (!says(d, "Does not fit")) expect(drawn.map((v) => v.toFixed(6))).toEqual(given.map((v) => v.toFixed(6)));
  });

  it("says when a raceway is too full", () => {
    const d = drawRacewaySection({
      name: "1/2 in EMT",
      inside_in: 0.622,
      outside_in: 0.706,
      conductors: [...wires, ...wires],
      fill_percent: 120,
      limit_percent: 40,
    });
    expectSound(d);
    expect(says(d, "TOO FULL") && says(d, "Does not fit as drawn")).toBe(true);
  });

  it.each([
    [42, "12 in³ free"],
    [30, "0 in³ free"],
    [20.3, "TOO SMALL by 9.7 in³"],
  ])("draws a box of %s in³ with 30 in³ used", (volume_in3, words) => {
    const d = drawBoxSection({
      name: "outlet box",
      volume_in3,
      used: [
        { words: "conductors", volume_in3: 15 },
        { words: "ground", volume_in3: 5 },
        { words: "device", volume_in3: 10 },
      ],
    });
    expectSound(d);
    expect(d.alt).toContain(words);
    const layers = d.marks
      .filter((m) => m.is === "path" && m.closed && m.weight === "fine")
      .map((m) => (m.is === "path" ? distance(m.points[1]!, m.points[2]!) : 0));
    expect(layers[0]! / layers[1]!).toBeCloseTo(3, 6);
    expect(layers[2]! / layers[1]!).toBeCloseTo(2, 6);
  });

  it.each(seeds)("draws mounting %i with the height in scale", (seed) => {
    const next = seeded(seed);
    const centre_height_in = 18 + Math.round(next() * 48);
    const post = seed % 2 === 0;
    const d = drawMountingElevation({
      on: post ? "post" : "wall",
      centre_height_in,
      outlet: "RV outlet, 50 A",
      box: { width_in: 4 + next() * 10, height_in: 5 + next() * 12 },
      cover: "weatherproof with the plug in",
      ...(seed % 3 === 0 ? {} : { riser: { words: "1 in PVC-80", outside_in: 1.315, burial_in: 18, protection: { words: "Schedule 80", height_in: 12 } } }),
      ...(post ? { post: { width_in: 5.5, top_in: centre_height_in + 14, embedment_in: 30, words: "treated post" } } : {}),
      ...(seed % 5 === 0 ? {} : { working_space: { width_in: 30, depth_in: 36, height_in: 78 } }),
    });
    expectSound(d);
    expect(says(d, `${centre_height_in} in`)).toBe(true);
    if (post) {
      const embedded = d.marks.find((m) => m.is === "path" && m.closed && m.dash === "hidden");
      const outlet = d.marks.find((m) => m.is === "circle" && m.weight === "thin");
      if (embedded?.is !== "path" || outlet?.is !== "circle") throw new Error("post or outlet missing");
      const grade = embedded.points[0]![1];
      const perInch = distance(embedded.points[1]!, embedded.points[2]!) / 30;
      expect(grade - outlet.at[1]).toBeCloseTo(centre_height_in * perInch, 6);
    }
  });

  it.each(seeds)("draws panel %i: every breaker in its spaces, new ones heavy and marked", (seed) => {
    const next = seeded(seed);
    const spaces = 2 + Math.floor(next() * 42) * 2;
    const taken = new Set<number>();
    const positions: PanelPosition[] = [];
    for (let i = 0; i < spaces; i++) {
      const space = 1 + Math.floor(next() * spaces);
      const poles = next() < 0.4 ? (2 as const) : (1 as const);
      if (taken.has(space) || (poles === 2 && (taken.has(space + 2) || space + 2 > spaces))) continue;
      taken.add(space);
      if (poles === 2) taken.add(space + 2);
      positions.push({ space, poles, rating_A: 20, serves: `Circuit of space ${space}`, fresh: next() < 0.2, tag: `C${space}` });
    }
    const pages = drawPanelElevation({ name: "A", bus_A: 200, main_A: 200, spaces, positions });
    for (const page of pages) {
      expectSound(page);
      expect(page.height).toBeLessThanOrEqual(572);
    }
    const words = pages.flatMap(letteringOf).map((m) => m.text);
    for (let space = 1; space <= spaces; space++) expect(words.filter((w) => w === `${space}`)).toHaveLength(1);
    for (const p of positions)
      expect(
        words.some((w) => w.startsWith(p.fresh ? `C${p.space} ` : "Circuit")),
        p.serves,
      ).toBe(true);
    expect(words.some((w) => w.startsWith("NOT DRAWN"))).toBe(false);
  });

  it("tells of breakers that claim a taken space", () => {
    const same = { space: 1, poles: 2 as const, serves: "Range", fresh: false };
    const [d] = drawPanelElevation({ name: "A", bus_A: 100, spaces: 4, positions: [same, { ...same, space: 3, serves: "Dryer" }] });
    expectSound(d!);
    expect(says(d!, "NOT DRAWN, space 3, 5")).toBe(true);
  });
});

describe("long words", () => {
  const long = "Words that a preparer may write at length in a job ".repeat(7).trim();
  it.each([
    drawTrenchSection({
      cover_in: 18,
      depth_in: 24,
      width_in: 6,
      bedding_in: 2,
      ribbon_depth_in: 12,
      surface: long,
      least_cover_words: long,
      wiring: { kind: "raceway", name: long, outside_in: 1.315, inside_in: 1.029, conductors: [{ ...conductor("L1", 0.2, "hot"), words: long }] },
    }),
    drawRacewaySection({
      name: long,
      inside_in: 1,
      outside_in: 1.3,
      conductors: [{ ...conductor("L1", 0.05, "hot"), words: long }],
      fill_percent: 3,
      limit_percent: 53,
    }),
    drawBoxSection({
      name: long,
      volume_in3: 30,
      used: [
        { words: long, volume_in3: 10 },
        { words: long, volume_in3: 0.1 },
      ],
    }),
    drawMountingElevation({
      on: "wall",
      centre_height_in: 40,
      outlet: long,
      box: { width_in: 6, height_in: 8 },
      cover: long,
      riser: { words: long, outside_in: 1, burial_in: 18, protection: { words: long, height_in: 10 } },
    }),
    ...drawPanelElevation({ name: long, bus_A: 200, spaces: 84, positions: [{ space: 84, poles: 1, rating_A: 1000, serves: long, fresh: true, tag: long }] }),
    drawVoltageProfile({
      points: [
        { name: long, distance_ft: 0, volts: 120 },
        { name: long, distance_ft: 0, volts: 120 },
      ],
      load_words: long,
    }),
    drawLoadBar({ existing_A: 0.1, added_A: 0.1, rating_A: 60, existing_words: long, added_words: long }),
  ])("do not meet or leave the frame: $title", (d) => expectSound(d));
});

describe("plots", () => {
  it.each(seeds)("draws voltage profile %i in proportion", (seed) => {
    const next = seeded(seed);
    let [feet, volts] = [0, 240];
    const points = Array.from({ length: 2 + Math.floor(next() * 8) }, (_, i) => {
      const point = { name: `Point ${i + 1}`, distance_ft: feet, volts };
      feet += 1 + next() * 80;
      volts -= next() * 3;
      return point;
    });
    const d = drawVoltageProfile({ points, limit: { volts: 232.8, words: "3 % drop" }, load_words: "50 A drawn" });
    expectSound(d);
    const way = d.marks.find((m) => m.is === "path" && m.weight === "heavy");
    const places = way?.is === "path" ? way.points : [];
    const perVolt = (places.at(-1)![1] - places[0]![1]) / (points[0]!.volts - points.at(-1)!.volts);
    for (const [i, p] of points.entries()) expect(places[i]![1] - places[0]![1]).toBeCloseTo((240 - p.volts) * perVolt, 6);
  });

  it.each([
    [92.4, 50, 200, "57.6 A to spare"],
    [92.4, 50, 142.4, "0 A to spare"],
    [92.4, 50, 100, "OVER THE RATING by 42.4 A"],
    [0, 12, 400, "388 A to spare"],
  ])("draws %s A and %s A on %s A: %s", (existing_A, added_A, rating_A, words) => {
    const d = drawLoadBar({ existing_A, added_A, rating_A, existing_words: "existing dwelling", added_words: "RV outlet" });
    expectSound(d);
    expect(d.alt).toContain(words);
  });
});
