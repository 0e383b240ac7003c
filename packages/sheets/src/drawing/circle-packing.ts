import type { Point } from "./marks.js";
import { distance } from "./plane-geometry.js";

export interface Laid {
  /** Which of the circles given. */
  readonly index: number;
  readonly at: Point;
  readonly r: number;
}

/** Lays circles in a round one as they would lie: the largest first, each at the lowest free place. Those without a place are left over. */
export function packCircles(radii: readonly number[], container: number): { readonly laid: readonly Laid[]; readonly leftOver: readonly number[] } {
  const laid: Laid[] = [];
  const leftOver: number[] = [];
  const order = radii.map((r, index) => ({ r, index })).sort((a, b) => b.r - a.r || a.index - b.index);
  for (const { r, index } of order) {
    const free = placesFor(r, container, laid).filter(
      (at) => distance(at, [0, 0]) <= container - r + 1e-6 && laid.every((other) => distance(at, other.at) >= r + other.r - 1e-6),
    );
    free.sort((a, b) => (Math.abs(b[1] - a[1]) > 1e-6 ? b[1] - a[1] : a[0] - b[0]));
    if (free[0] === undefined) leftOver.push(index);
    else laid.push({ index, at: free[0], r });
  }
  return { laid, leftOver };
}

function placesFor(r: number, container: number, laid: readonly Laid[]): Point[] {
  const reach = container - r;
  if (reach < 0) return [];
  const places: Point[] = [[0, reach]];
  for (const [i, a] of laid.entries()) {
    places.push(...crossings([0, 0], reach, a.at, a.r + r));
    for (const b of laid.slice(i + 1)) places.push(...crossings(a.at, a.r + r, b.at, b.r + r));
  }
  return places;
}

/** Where two circles cross. */
function crossings(a: Point, ra: number, b: Point, rb: number): Point[] {
  const d = distance(a, b);
  if (d < 1e-9 || d > ra + rb || d < Math.abs(ra - rb)) return [];
  const along = (ra * ra - rb * rb + d * d) / (2 * d);
  const across = Math.sqrt(Math.max(0, ra * ra - along * along));
  const [ux, uy] = [(b[0] - a[0]) / d, (b[1] - a[1]) / d];
  const foot: Point = [a[0] + ux * along, a[1] + uy * along];
  return [
    [foot[0] - uy * across, foot[1] + ux * across],
    [foot[0] + uy * across, foot[1] - ux * across],
  ];
}
