import { MARKER_REACH, markerOf, SITE_POINTS, type SitePointKind } from "../symbols/site-points.js";
import { type Label, placeLabels } from "./label-placing.js";
import { LINE_HEIGHT, widthOf, wrap } from "./lettering.js";
import { type Dash, type Drawing, figure, fitted, line, type Mark, type Point, path, text, type Weight } from "./marks.js";
import { between, bounds, centroid, distance, hatchLines, nearest, pairs } from "./plane-geometry.js";
import { compareRoutes, type DrawnRoute, type RouteComparison, type StatedLength } from "./route-comparison.js";
import { compass, scaleBar } from "./site-furniture.js";
import { type FeetPerInch, pointsPerFoot, scaleFor, scaleWords } from "./site-scale.js";

export type OutlineKind = "house" | "garage" | "drive" | "pool" | "other";

/** All places in feet, x to the right and y up the page. */
export interface SitePlanInput {
  readonly title?: string;
  readonly lot: readonly Point[];
  readonly outlines: readonly { readonly kind: OutlineKind; readonly name: string; readonly points: readonly Point[] }[];
  readonly points: readonly { readonly kind: SitePointKind; readonly name: string; readonly at: Point }[];
  readonly routes: readonly DrawnRoute[];
  readonly overhead: readonly (readonly Point[])[];
  /** Clockwise from the top of the page to true north. */
  readonly north_degrees: number;
  readonly scale_note?: string;
  readonly stated: readonly StatedLength[];
  /** Points of the page; a Letter sheet's drawing room if left out. */
  readonly frame?: { readonly width: number; readonly height: number };
  /** A strip across the top kept empty for an agency's stamp, in points. */
  readonly clear_top?: number;
}
export interface Setback {
  readonly name: string;
  readonly distance_ft: number;
  readonly from: Point;
  readonly to: Point;
}
export interface SitePlan {
  readonly drawing: Drawing;
  readonly scale: FeetPerInch;
  readonly comparison: readonly RouteComparison[];
  readonly setbacks: readonly Setback[];
  /** Words for which the plan had no room; print them below it. */
  readonly unplaced: readonly string[];
}

const FRAME = { width: 522, height: 572 } as const;
const PAD = 24;
const FURNITURE = 58;
const KEY_COLUMN = 174;
const NOTE_LINES = 3;
const LEAST_ROOM = 120;
const OUTLINES: Record<OutlineKind, { words: string; weight: Weight; hatch: { degrees: number; spacing: number } | null; dash?: Dash }> = {
  house: { words: "house", weight: "medium", hatch: { degrees: -45, spacing: 11 } },
  garage: { words: "garage", weight: "medium", hatch: { degrees: 45, spacing: 11 } },
  drive: { words: "drive or paving", weight: "fine", hatch: null, dash: "hidden" },
  pool: { words: "pool", weight: "thin", hatch: { degrees: 0, spacing: 5 } },
  other: { words: "other", weight: "thin", hatch: null },
};
const LINES = {
  lot: { words: "lot line", weight: "thin", dash: "lot" },
  trench: { words: "new, in trench", weight: "heavy", dash: "trench" },
  indoors: { words: "new, not buried", weight: "heavy", dash: undefined },
  overhead: { words: "overhead line", weight: "thin", dash: "overhead" },
  setback: { words: "distance", weight: "fine", dash: "setback" },
} as const;

/** The site to scale, with the new route, its lengths, and the distance from each outlet to the lot line. Throws where the frame leaves no room. */
export function drawSitePlan(given: SitePlanInput): SitePlan {
  const frame = given.frame ?? FRAME;
  const entries = legendOf(given);
  const columns = Math.max(1, Math.floor(frame.width / KEY_COLUMN));
  const note = given.scale_note === undefined ? [] : firstLines(wrap(given.scale_note, frame.width - 90));
  const furnitureHeight = FURNITURE + note.length * LINE_HEIGHT;
  const legendTop = frame.height - Math.ceil(entries.length / columns) * LINE_HEIGHT - 4;
  const room = { left: 1, top: 1 + (given.clear_top ?? 0), right: frame.width - 1, bottom: legendTop - furnitureHeight - 6 };

  if (room.bottom - room.top < LEAST_ROOM || frame.width < 3 * LEAST_ROOM)
    throw new RangeError(`a frame of ${frame.width} × ${frame.height} points leaves no room for a site plan`);

  // 1. Scale, and feet to points of the page.
  const most = { width: room.right - room.left - 2 * PAD, height: room.bottom - room.top - 2 * PAD };
  const [upright, across] = [given, quarterTurned(given)]
    .map((input) => ({ input, site: extentOf(input) }))
    .map((way) => ({ ...way, scale: scaleFor(way.site, most) }));
  // A long lot lies across the sheet where that shows it twice as large.
  const { input, site, scale } = across!.scale * 2 <= upright!.scale ? across! : upright!;
  const perFoot = pointsPerFoot(scale);
  const [middleX, middleY] = [(room.left + room.right) / 2, (room.top + room.bottom) / 2];
  const put = ([x, y]: Point): Point => [middleX + (x - (site.left + site.right) / 2) * perFoot, middleY - (y - (site.top + site.bottom) / 2) * perFoot];

  // 2. What stands on the ground.
  const outlines = input.outlines.map((o) => ({ ...o, shape: o.points.map(put) }));
  const lot = input.lot.map(put);
  const routes = input.routes.map((r) => ({ ...r, way: r.points.map(put) }));
  const overhead = input.overhead.map((o) => o.map(put));
  const setbacks = setbacksOf(input);
  const marks: Mark[] = [
    ...outlines.flatMap((o): Mark[] => {
      const { hatch, weight, dash } = OUTLINES[o.kind];
      const lines = hatch === null ? [] : hatchLines(o.shape, hatch.degrees, hatch.spacing).map(([a, b]) => line(a, b, "fine"));
      return [path(o.shape, weight, { closed: true, fill: "white", ...(dash === undefined ? {} : { dash }) }), ...lines];
    }),
    path(lot, LINES.lot.weight, { closed: true, dash: LINES.lot.dash }),
    ...overhead.map((o) => path(o, LINES.overhead.weight, { dash: LINES.overhead.dash })),
    ...setbacks.map((s) => line(put(s.from), put(s.to), "fine", LINES.setback.dash)),
    ...routes.map((r) => path(r.way, "heavy", r.in_trench ? { dash: LINES.trench.dash } : {})),
    ...input.points.flatMap((p) => markerOf(p.kind, put(p.at))),
  ];

  // 3. Lettering, the most needful first.
  const labels: Label[] = [
    ...input.points.map((p): Label => ({ at: put(p.at), lines: named(p.name), bold: p.kind === "outlet", reach: MARKER_REACH })),
    ...routes.flatMap((r) => legLabels(r, put)),
    ...setbacks.map((s): Label => {
      const ends = [put(s.from), put(s.to)] as const;
      return { at: between(...ends), along: ends, lines: [`${figure(s.distance_ft, 1)} ft to lot line`] };
    }),
    ...outlines.map((o): Label => ({ at: centroid(o.shape), lines: [fitted(o.name, 190)], upon: true })),
    ...overhead.filter((o) => o.length > 1).map((o): Label => alongLongest(o, "overhead line")),
    ...pairs(input.lot, true).map(([a, b]): Label => {
      const ends = [put(a), put(b)] as const;
      return { at: between(...ends), along: ends, lines: [`${figure(distance(a, b), 1)} ft`] };
    }),
  ];
  const { marks: lettering, unplaced } = placeLabels(labels, {
    room,
    solids: input.points.map((p) => squareAt(put(p.at))),
    lines: [
      ...routes.flatMap((r) => pairs(r.way).map((stretch) => ({ stretch, cost: 110 }))),
      ...pairs(lot, true).map((stretch) => ({ stretch, cost: 45 })),
      ...outlines.flatMap((o) => pairs(o.shape, true).map((stretch) => ({ stretch, cost: 60 }))),
      ...overhead.flatMap((o) => pairs(o).map((stretch) => ({ stretch, cost: 45 }))),
      ...setbacks.map((s) => ({ stretch: [put(s.from), put(s.to)] as const, cost: 30 })),
    ],
  });

  // 4. Scale, north and legend.
  const rule = room.bottom + 6;
  const furniture: Mark[] = [
    line([0, rule], [frame.width, rule], "fine"),
    ...scaleBar(scale, [0, rule + 8]),
    ...[`Scale ${scaleWords(scale)} when printed at 100 %`, ...note].map((words, i) => text([0, rule + FURNITURE - 6 + i * LINE_HEIGHT], words)),
    ...compass([frame.width - 34, rule + furnitureHeight / 2], input.north_degrees),
    line([0, rule + furnitureHeight], [frame.width, rule + furnitureHeight], "fine"),
    ...entries.flatMap((entry, i) => {
      const x = (i % columns) * (frame.width / columns);
      const y = legendTop + Math.floor(i / columns) * LINE_HEIGHT + LINE_HEIGHT / 2 + 2;
      return [...entry.sample(x, y), text([x + 40, y + 5], fitted(entry.words, frame.width / columns - 46))];
    }),
  ];
  const title = input.title ?? "Site plan";
  const comparison = compareRoutes(input.routes, input.stated);
  const alt = [
    `${title} at ${scaleWords(scale)}.`,
    ...comparison.filter((c) => c.drawn_ft !== null).map((c) => `${c.segment}: ${figure(c.drawn_ft ?? 0, 1)} ft on the plan.`),
    ...setbacks.map((s) => `${s.name}: ${figure(s.distance_ft, 1)} ft from the lot line.`),
  ].join(" ");
  return {
    drawing: { title, alt, width: frame.width, height: frame.height, marks: [...marks, ...lettering, ...furniture] },
    scale,
    comparison,
    setbacks: setbacksOf(given),
    unplaced,
  };
}

/** Feet to the right and up that everything on the plan takes. */
function extentOf({ lot, outlines, points, routes, overhead }: SitePlanInput) {
  const site = bounds([...lot, ...outlines.flatMap((o) => o.points), ...points.map((p) => p.at), ...routes.flatMap((r) => r.points), ...overhead.flat()]);
  return { ...site, width: site.right - site.left, height: site.bottom - site.top };
}

/** The same site with the top of its page at the right. */
function quarterTurned(input: SitePlanInput): SitePlanInput {
  const turned = ([x, y]: Point): Point => [y, -x];
  return {
    ...input,
    lot: input.lot.map(turned),
    outlines: input.outlines.map((o) => ({ ...o, points: o.points.map(turned) })),
    points: input.points.map((p) => ({ ...p, at: turned(p.at) })),
    routes: input.routes.map((r) => ({ ...r, points: r.points.map(turned) })),
    overhead: input.overhead.map((o) => o.map(turned)),
    north_degrees: input.north_degrees + 90,
  };
}

const firstLines = (lines: readonly string[]): readonly string[] =>
  lines.length <= NOTE_LINES ? lines : [...lines.slice(0, NOTE_LINES - 1), `${lines[NOTE_LINES - 1]!.slice(0, -2)}…`];

const squareAt = ([x, y]: Point): readonly Point[] => {
  const h = MARKER_REACH + 1;
  return [
    [x - h, y - h],
    [x + h, y - h],
    [x + h, y + h],
    [x - h, y + h],
  ];
};

/** Long names break into two lines. */
function named(name: string): readonly string[] {
  if (widthOf(name) <= 130 || !name.includes(" ")) return [fitted(name, 190)];
  const words = name.split(/\s+/);
  const cuts = words.map((_, i) => [words.slice(0, i).join(" "), words.slice(i).join(" ")] as const).slice(1);
  const widest = (c: readonly [string, string]) => Math.max(widthOf(c[0]), widthOf(c[1]));
  const best = cuts.reduce((a, b) => (widest(b) < widest(a) ? b : a));
  return best.map((half) => fitted(half, 190));
}

/** Least distance from each outlet to the lot line, in feet. */
export function setbacksOf(input: Pick<SitePlanInput, "lot" | "points">): readonly Setback[] {
  return input.points
    .filter((p) => p.kind === "outlet")
    .map((p) => {
      const feet = pairs(input.lot, true).map(([a, b]) => nearest(p.at, a, b));
      const to = feet.reduce((best, f) => (distance(p.at, f) < distance(p.at, best) ? f : best));
      return { name: p.name, distance_ft: distance(p.at, to), from: p.at, to };
    });
}

/** Each leg's length along it; the segment's name and whole length where it has more than one leg. */
function legLabels(route: DrawnRoute, put: (p: Point) => Point): readonly Label[] {
  const legs = pairs(route.points).filter(([a, b]) => distance(a, b) > 0.05);
  const whole = legs.reduce((sum, [a, b]) => sum + distance(a, b), 0);
  const size = `${figure(whole, 1)} ft ${route.in_trench ? "trench" : "run"}`;
  const segment = fitted(route.segment, 190);
  const name = widthOf(`${segment}: ${size}`) <= 130 ? [`${segment}: ${size}`] : [`${segment}:`, size];
  if (legs.length === 0) return [];
  const longest = longestOf(legs);
  return [
    ...(legs.length === 1
      ? []
      : legs.map(([a, b]): Label => ({ at: between(put(a), put(b)), along: [put(a), put(b)], lines: [`${figure(distance(a, b), 1)} ft`] }))),
    {
      at: between(put(longest[0]), put(longest[1])),
      ...(legs.length === 1 ? { along: [put(longest[0]), put(longest[1])] as const } : {}),
      lines: name,
      bold: true,
    },
  ];
}

const longestOf = (legs: readonly (readonly [Point, Point])[]): readonly [Point, Point] =>
  legs.toSorted(([a, b], [c, d]) => distance(c, d) - distance(a, b))[0]!;

function alongLongest(way: readonly Point[], words: string): Label {
  const ends = longestOf(pairs(way));
  return { at: between(...ends), along: ends, lines: [words] };
}

interface Entry {
  readonly words: string;
  readonly sample: (x: number, y: number) => readonly Mark[];
}

/** Only what the plan shows. */
function legendOf(input: SitePlanInput): readonly Entry[] {
  const strokes = [
    "lot" as const,
    ...(input.routes.some((r) => r.in_trench) ? ["trench" as const] : []),
    ...(input.routes.some((r) => !r.in_trench) ? ["indoors" as const] : []),
    ...(input.overhead.length > 0 ? ["overhead" as const] : []),
    ...(input.points.some((p) => p.kind === "outlet") ? ["setback" as const] : []),
  ];
  const kinds = (Object.keys(OUTLINES) as OutlineKind[]).filter((k) => input.outlines.some((o) => o.kind === k));
  const points = (Object.keys(SITE_POINTS) as SitePointKind[]).filter((k) => input.points.some((p) => p.kind === k));
  return [
    ...strokes.map((k): Entry => ({ words: LINES[k].words, sample: (x, y) => [line([x, y], [x + 34, y], LINES[k].weight, LINES[k].dash)] })),
    ...kinds.map(
      (k): Entry => ({
        words: OUTLINES[k].words,
        sample: (x, y) => {
          const shape: readonly Point[] = [
            [x + 1, y - 6],
            [x + 33, y - 6],
            [x + 33, y + 6],
            [x + 1, y + 6],
          ];
          const { hatch, weight, dash } = OUTLINES[k];
          return [
            path(shape, weight, { closed: true, ...(dash === undefined ? {} : { dash }) }),
            ...(hatch === null ? [] : hatchLines(shape, hatch.degrees, hatch.spacing * 0.6).map(([a, b]) => line(a, b, "fine"))),
          ];
        },
      }),
    ),
    ...points.map((k): Entry => ({ words: SITE_POINTS[k], sample: (x, y) => markerOf(k, [x + 17, y]) })),
  ];
}
