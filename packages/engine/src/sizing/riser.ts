import { everyEdition } from "../basis/edition.js";
import type { DesignedRun } from "../designed.js";
import type { Segment } from "../job/schema.js";

/** What the ground's movement asks. One published source each for 2020 and 2023, named in the test; 2017 and 2026 from memory: the weakest stands for all. */
export const EARTH_MOVEMENT = { sections: everyEdition("300.5(J)"), standing: "memory" } as const;

/** The stretches in the ground that a stretch outdoors comes straight up from; none where it is no riser. */
export function groundUnder(run: Pick<DesignedRun, "segments">, i: number): readonly Segment[] {
  if (run.segments[i]?.segment.place !== "outdoors") return [];
  return [i - 1, i + 1].flatMap((j) => run.segments[j]?.segment ?? []).filter(({ place }) => place === "buried");
}
