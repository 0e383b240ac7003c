import type { DesignedRun } from "../designed.js";
import type { Segment } from "../job/schema.js";

/** The stretches in the ground that a stretch outdoors comes straight up from; none where it is no riser. */
export function groundUnder(run: Pick<DesignedRun, "segments">, i: number): readonly Segment[] {
  if (run.segments[i]?.segment.place !== "outdoors") return [];
  return [i - 1, i + 1].flatMap((j) => run.segments[j]?.segment ?? []).filter(({ place }) => place === "buried");
}
