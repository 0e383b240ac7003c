import type { Size } from "./tables/size.js";

/** So many conductors of a size. */
export interface Conductors {
  readonly size: Size;
  readonly count: number;
}

/** Hots and neutral of one set by size: the neutral by itself where it has a size of its own. */
export function hotsAndNeutral(conductor: Conductors, neutral: Size | null): readonly [like: Conductors, ...Conductors[]] {
  if (neutral === null) return [conductor];
  return [
    { size: conductor.size, count: conductor.count - 1 },
    { size: neutral, count: 1 },
  ];
}
