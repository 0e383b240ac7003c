import type { DesignedSegment } from "./designed.js";
import type { Size } from "./tables/size.js";

/** Hots and neutral of one set of a stretch, by size: the neutral by itself where it has a size of its own. */
export function hotsAndNeutral({ conductor, neutral }: Pick<DesignedSegment, "conductor" | "neutral">): readonly {
  readonly size: Size;
  readonly count: number;
}[] {
  if (neutral === null) return [{ size: conductor.size, count: conductor.count }];
  return [
    { size: conductor.size, count: conductor.count - 1 },
    { size: neutral.size, count: 1 },
  ];
}
