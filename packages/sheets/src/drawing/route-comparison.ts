import type { Point } from "./marks.js";
import { lengthOf } from "./plane-geometry.js";

export interface DrawnRoute {
  readonly circuit: string;
  readonly segment: string;
  readonly in_trench: boolean;
  /** Corners of the way, in feet. */
  readonly points: readonly Point[];
  /** Feet of rises and drops, which a plan cannot show. */
  readonly rises_ft?: number;
}
export interface StatedLength {
  readonly circuit: string;
  readonly segment: string;
  readonly length_ft: number;
}
export interface RouteComparison {
  readonly circuit: string;
  readonly segment: string;
  readonly drawn_ft: number | null;
  readonly rises_ft: number;
  readonly stated_ft: number | null;
  /** Stated less drawn and rises. */
  readonly difference_ft: number | null;
  readonly verdict: "agrees" | "stated-shorter" | "stated-longer" | "not-stated" | "not-drawn";
}

/** Feet by which coordinates to the nearest half foot may make a way too long. */
const ROUNDING_FT = 1;
/** Slack above which a stated length looks like another route (common practice, no source). */
const SLACK_FT = 10;
const SLACK_SHARE = 0.25;

/** Each segment's length on the plan beside the length its circuit was computed with. */
export function compareRoutes(routes: readonly DrawnRoute[], stated: readonly StatedLength[]): readonly RouteComparison[] {
  const key = (r: { circuit: string; segment: string }) => JSON.stringify([r.circuit, r.segment]);
  const drawn = new Map<string, { drawn: number; rises: number }>();
  for (const route of routes) {
    const before = drawn.get(key(route)) ?? { drawn: 0, rises: 0 };
    drawn.set(key(route), { drawn: before.drawn + lengthOf(route.points), rises: before.rises + (route.rises_ft ?? 0) });
  }
  const names = new Map([...stated, ...routes].map((r) => [key(r), { circuit: r.circuit, segment: r.segment }]));
  return [...names].map(([k, name]): RouteComparison => {
    const way = drawn.get(k);
    const length = stated.find((s) => key(s) === k)?.length_ft ?? null;
    if (way === undefined) return { ...name, drawn_ft: null, rises_ft: 0, stated_ft: length, difference_ft: null, verdict: "not-drawn" };
    const whole = way.drawn + way.rises;
    const row = { ...name, drawn_ft: way.drawn, rises_ft: way.rises, stated_ft: length };
    if (length === null) return { ...row, difference_ft: null, verdict: "not-stated" };
    const difference = length - whole;
    const verdict = difference < -ROUNDING_FT ? "stated-shorter" : difference > Math.max(SLACK_FT, whole * SLACK_SHARE) ? "stated-longer" : "agrees";
    return { ...row, difference_ft: difference, verdict };
  });
}
