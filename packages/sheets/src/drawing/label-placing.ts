import { LINE_HEIGHT, widthOf } from "./lettering.js";
import { ASCENT, circle, cornersOf, line, type Mark, type Point, type TextMark, text } from "./marks.js";
import { between, bounds, distance, meet } from "./plane-geometry.js";

/** Words to be put near a place. Along a stretch they lie parallel to it where there is room. */
export interface Label {
  readonly lines: readonly string[];
  readonly bold?: boolean;
  readonly at: Point;
  readonly along?: readonly [Point, Point];
  /** On the place itself first, as for the name of a building. */
  readonly upon?: boolean;
  /** How far a marker at the place reaches; its leader begins there and needs no dot. */
  readonly reach?: number;
}
/** What is on the paper already. Lettering never goes on a `solid`; it pays `cost` to lie over a line. */
export interface Ground {
  readonly room: { readonly left: number; readonly top: number; readonly right: number; readonly bottom: number };
  readonly solids: readonly (readonly Point[])[];
  readonly lines: readonly { readonly stretch: readonly [Point, Point]; readonly cost: number }[];
}
interface Placing {
  readonly texts: readonly TextMark[];
  readonly leader: readonly [Point, Point] | null;
}
/** A place with what it costs by itself; its lettering is laid out only where it can still be the cheapest. */
interface Candidate {
  readonly cost: number;
  readonly lay: () => Placing;
}

const RINGS = [10, 18, 28, 40, 56, 76, 100, 130, 165, 205, 250, 300] as const;
const LEADER_FROM = 18;
const CROSSED_LEADER = 90;

/** Puts each label, in the order given, at its cheapest free place; those with no free place come back by their words. */
export function placeLabels(labels: readonly Label[], ground: Ground): { readonly marks: readonly Mark[]; readonly unplaced: readonly string[] } {
  const marks: Mark[] = [];
  const unplaced: string[] = [];
  const taken: (readonly Point[])[] = [...ground.solids];
  const leaders: (readonly [Point, Point])[] = [];
  const { left, right, top, bottom } = ground.room;
  for (const label of labels) {
    let best: (Placing & { readonly cost: number }) | null = null;
    for (const candidate of candidatesOf(label)) {
      if (best !== null && candidate.cost >= best.cost) continue;
      const placing = candidate.lay();
      const boxes = placing.texts.map(cornersOf);
      const inside = boxes.every((b) => b.every(([x, y]) => x >= left && x <= right && y >= top && y <= bottom));
      if (!inside || boxes.some((b) => taken.some((t) => meet(b, t)) || leaders.some((l) => meet(b, l)))) continue;
      const way = placing.leader;
      if (way !== null && taken.slice(ground.solids.length).some((t) => meet(way, t))) continue;
      const over = ground.lines.reduce(
        (sum, l) => sum + (boxes.some((b) => meet(b, l.stretch)) ? l.cost : 0) + (way !== null && meet(way, l.stretch) ? l.cost / 8 : 0),
        0,
      );
      const crossed = way === null ? 0 : leaders.filter((l) => meet(way, l)).length * CROSSED_LEADER;
      const cost = candidate.cost + over + crossed;
      if (best === null || cost < best.cost) best = { ...placing, cost };
    }
    if (best === null) {
      unplaced.push(label.lines.join(" "));
      continue;
    }
    if (best.leader !== null) {
      leaders.push(best.leader);
      marks.push(line(best.leader[0], best.leader[1], "fine"), ...(label.reach === undefined ? [circle(best.leader[0], 1.6, "fine", "black")] : []));
    }
    taken.push(...best.texts.map(cornersOf));
    marks.push(...best.texts);
  }
  return { marks: [...marks.filter((m) => m.is !== "text"), ...marks.filter((m) => m.is === "text")], unplaced };
}

function candidatesOf(label: Label): readonly Candidate[] {
  const { at, lines, bold = false, along, upon = false, reach: begins = 0 } = label;
  const width = Math.max(...lines.map((l) => widthOf(l)));
  const height = (lines.length - 1) * LINE_HEIGHT;
  const found: Candidate[] = [];
  const level = (centre: Point): readonly TextMark[] =>
    lines.map((l, i) => text([centre[0], centre[1] + ASCENT / 2 - height / 2 + i * LINE_HEIGHT], l, { anchor: "middle", bold, masked: true }));
  const around = (ring: number, angle: number): Placing => {
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    // The block of words stands wholly outside the ring, touching it.
    const reach = Math.min(
      Math.abs(cos) < 1e-6 ? Number.POSITIVE_INFINITY : width / 2 / Math.abs(cos),
      Math.abs(sin) < 1e-6 ? Number.POSITIVE_INFINITY : (height / 2 + ASCENT * 0.7) / Math.abs(sin),
    );
    const texts = level([at[0] + cos * (ring + reach), at[1] + sin * (ring + reach)]);
    const corners = bounds(texts.flatMap(cornersOf));
    const end: Point = [Math.min(Math.max(at[0], corners.left), corners.right), Math.min(Math.max(at[1], corners.top), corners.bottom)];
    const leader = ring >= LEADER_FROM && distance(at, end) > begins + 2 ? ([between(at, end, begins / distance(at, end)), end] as const) : null;
    return { texts, leader };
  };
  if (along !== undefined && lines.length === 1 && distance(...along) > width * 0.8) {
    const [p, q] = along[0][0] <= along[1][0] ? along : ([along[1], along[0]] as const);
    const turn = Math.round((Math.atan2(q[1] - p[1], q[0] - p[0]) * 18000) / Math.PI) / 100;
    const upright = turn >= 89.99 ? -90 : turn;
    const angle = (upright * Math.PI) / 180;
    for (const t of [0.5, 0.35, 0.65, 0.2, 0.8]) {
      for (const off of [-6, 6 + ASCENT]) {
        const on = between(p, q, t);
        const base: Point = [on[0] - Math.sin(angle) * off, on[1] + Math.cos(angle) * off];
        found.push({
          cost: Math.abs(t - 0.5) * 8 + (off < 0 ? 0 : 1),
          lay: () => ({ texts: lines.map((l) => text(base, l, { anchor: "middle", bold, turn: upright, masked: true })), leader: null }),
        });
      }
    }
  }
  if (upon) {
    for (const dy of [0, -14, 14, -28, 28, -46, 46]) found.push({ cost: Math.abs(dy) / 6, lay: () => ({ texts: level([at[0], at[1] + dy]), leader: null }) });
  }
  for (const ring of RINGS) {
    const ways = ring < 40 ? 8 : 16;
    for (let i = 0; i < ways; i++) {
      const angle = (i * 2 * Math.PI) / ways;
      found.push({ cost: (upon ? 12 : 2) + ring * 0.35 + (along !== undefined ? 6 : 0), lay: () => around(ring, angle) });
    }
  }
  return found;
}
