import { everyEdition } from "../basis/edition.js";
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
        const changes =
          before.conductor.size !== after.conductor.size ||
          before.sets !== after.sets ||
          before.grounding.size !== after.grounding.size ||
          isCable(before.segment.method) !== isCable(after.segment.method);
        if (changes)
          return fail(
            run.name,
            `${printSize(before.conductor.size)} with ${printSize(before.grounding.size)} ground (${before.segment.method}) becomes ${printSize(after.conductor.size)} with ${printSize(after.grounding.size)} ground (${after.segment.method}) between "${before.segment.name}" and "${after.segment.name}" with no box`,
            "put a box there, or carry one size and one kind of wire through",
          );
      }
      return pass(run.name, "one size and kind of wire from box to box");
    }),
};
