import type { Point } from "./marks.js";

export const distance = (a: Point, b: Point): number => Math.hypot(b[0] - a[0], b[1] - a[1]);
export const between = (a: Point, b: Point, t = 0.5): Point => [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
export const pairs = (points: readonly Point[], closed = false): readonly (readonly [Point, Point])[] =>
  points.flatMap((p, i) => {
    const next = points[i + 1] ?? (closed ? points[0] : undefined);
    return next === undefined ? [] : [[p, next] as const];
  });
export const lengthOf = (points: readonly Point[]): number => pairs(points).reduce((sum, [a, b]) => sum + distance(a, b), 0);

/** The point of a stretch a–b that is nearest to p. */
export function nearest(p: Point, a: Point, b: Point): Point {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const square = dx * dx + dy * dy;
  if (square === 0) return a;
  return between(a, b, Math.min(1, Math.max(0, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / square)));
}

/** Whether two convex shapes (a stretch counts as one) share room: the separating-axis theorem. Plain loops, for it is asked thousands of times a sheet. */
export function meet(a: readonly Point[], b: readonly Point[], slack = 0.01): boolean {
  if (apartAlong(a, b, 1, 0, 0) || apartAlong(a, b, 0, 1, 0)) return false;
  return !partedBySide(a, a, b, slack) && !partedBySide(b, a, b, slack);
}

/** Whether a line square to one of the sides of `shape` keeps the two apart. */
function partedBySide(shape: readonly Point[], a: readonly Point[], b: readonly Point[], slack: number): boolean {
  for (let i = 0; i < shape.length; i++) {
    const [p, q] = [shape[i]!, shape[(i + 1) % shape.length]!];
    const length = distance(p, q);
    if (length !== 0 && apartAlong(a, b, (p[1] - q[1]) / length, (q[0] - p[0]) / length, slack)) return true;
  }
  return false;
}

/** Whether the shadows of the two on the direction x, y share no more than `slack`; none at all where it is 0. */
function apartAlong(a: readonly Point[], b: readonly Point[], x: number, y: number, slack: number): boolean {
  let [a0, a1, b0, b1] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const p of a) {
    const at = p[0] * x + p[1] * y;
    a0 = Math.min(a0, at);
    a1 = Math.max(a1, at);
  }
  for (const p of b) {
    const at = p[0] * x + p[1] * y;
    b0 = Math.min(b0, at);
    b1 = Math.max(b1, at);
  }
  return slack === 0 ? a1 < b0 || b1 < a0 : a1 <= b0 + slack || b1 <= a0 + slack;
}

export const bounds = (points: readonly Point[]) => {
  const [xs, ys] = [points.map((p) => p[0]), points.map((p) => p[1])];
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
};

/** Centre of area of a polygon; of the corners where it has no area. */
export function centroid(points: readonly Point[]): Point {
  let [area, x, y] = [0, 0, 0];
  for (const [p, q] of pairs(points, true)) {
    const cross = p[0] * q[1] - q[0] * p[1];
    area += cross;
    x += (p[0] + q[0]) * cross;
    y += (p[1] + q[1]) * cross;
  }
  if (Math.abs(area) < 1e-9) return [points.reduce((s, p) => s + p[0], 0) / points.length, points.reduce((s, p) => s + p[1], 0) / points.length];
  return [x / (3 * area), y / (3 * area)];
}

/** Parallel stretches that fill a polygon, `spacing` apart, at `degrees` on the page (even–odd rule). */
export function hatchLines(polygon: readonly Point[], degrees: number, spacing: number): readonly (readonly [Point, Point])[] {
  const angle = (degrees * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const turned = polygon.map(([x, y]): Point => [x * cos + y * sin, -x * sin + y * cos]);
  const back = (x: number, y: number): Point => [x * cos - y * sin, x * sin + y * cos];
  const { top, bottom } = bounds(turned);
  const found: (readonly [Point, Point])[] = [];
  for (let y = Math.ceil(top / spacing) * spacing + spacing * 0.371; y < bottom; y += spacing) {
    const cuts = pairs(turned, true)
      .filter(([p, q]) => p[1] > y !== q[1] > y)
      .map(([p, q]) => p[0] + ((y - p[1]) / (q[1] - p[1])) * (q[0] - p[0]))
      .sort((a, b) => a - b);
    for (let i = 0; i + 1 < cuts.length; i += 2) found.push([back(cuts[i]!, y), back(cuts[i + 1]!, y)]);
  }
  return found;
}

/** A circle as a polygon of 32 sides, for hatching. */
export const roundOf = (at: Point, r: number): readonly Point[] =>
  Array.from({ length: 32 }, (_, i): Point => [at[0] + r * Math.cos((i * Math.PI) / 16), at[1] + r * Math.sin((i * Math.PI) / 16)]);
