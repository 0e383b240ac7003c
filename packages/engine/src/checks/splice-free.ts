import { everyEdition } from "../basis/edition.js";
import type { DesignedSegment } from "../designed.js";
import { isCable } from "../tables/cable.js";
import { printSize } from "../tables/size.js";
import type { Check, Outcome } from "./finding.js";
import { fail, pass } from "./outcome.js";

export const spliceFree: Check = {
  id: "splice-free",
  title: "Conductors change only in a box",
  rule: { sections: everyEdition("300.15"), standing: "published" },
  run: ({ design }) =>
    [...design.feeders, ...design.circuits].map(({ run, segments }): Outcome => {
      for (const [i, after] of segments.entries()) {
        const before = segments[i - 1];
        if (!before || run.boxes.some((box) => box.after === before.segment.name)) continue;
        const [was, is] = [wireOf(before), wireOf(after)];
        if (was !== is)
          return fail(
            run.name,
            `${was} becomes ${is} between "${before.segment.name}" and "${after.segment.name}" with no box`,
            "put a box there, or carry one size and one kind of wire through",
          );
      }
      return pass(run.name, "one size and kind of wire from box to box");
    }),
};

/** What cannot change without a joint: one cable is not another, nor one insulation or metal another. */
function wireOf({ segment: { method, conductors }, conductor, grounding, sets }: DesignedSegment): string {
  const kind = isCable(method) ? method : `${conductors.material} ${conductors.insulation}`;
  return `${sets > 1 ? `${sets} sets of ` : ""}${printSize(conductor.size)} ${kind} with ${printSize(grounding.size)} ground`;
}
