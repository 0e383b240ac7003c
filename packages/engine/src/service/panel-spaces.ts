import type { Panel } from "../job/schema.js";

/** Bus leg of a space: odd spaces on the left, even on the right, legs alternate down each side. Common practice, no source. */
export function legOf(space: number): "L1" | "L2" {
  return Math.floor((space - 1) / 2) % 2 === 0 ? "L1" : "L2";
}

/** Spaces that hold something already; a two-pole breaker at n holds n and n + 2. */
export function occupiedSpaces(panel: Panel): ReadonlySet<number> {
  return new Set(panel.directory.flatMap((row) => (row.poles === 2 ? [row.space, row.space + 2] : [row.space])));
}

/** Pairs of adjacent free spaces, on opposite legs, that would take a two-pole breaker. */
export function freePairs(panel: Panel): readonly (readonly [number, number])[] {
  const taken = occupiedSpaces(panel);
  return Array.from({ length: Math.max(0, panel.spaces - 2) }, (_, i) => [i + 1, i + 3] as const).filter((pair) => pair.every((space) => !taken.has(space)));
}
