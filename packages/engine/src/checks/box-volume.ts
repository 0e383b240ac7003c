import { everyEdition } from "../basis/edition.js";
import { decimal, print } from "../quantity.js";
import type { Check } from "./finding.js";
import { fail, needsPerson, notApplicable, pass } from "./outcome.js";

export const boxVolume: Check = {
  id: "box-volume",
  title: "Each box holds what is in it",
  rule: { sections: everyEdition("314.16"), standing: "published" },
  run: ({ design }) =>
    [...design.feeders, ...design.circuits].flatMap(({ run, boxes, segments }) =>
      boxes.map((b) => {
        const subject = `${run.name}: ${b.box.name}`;
        if (b.byDimensions) return notApplicable(subject, "conductors of 4 AWG or larger: sized by its dimensions, 314.28");
        if (decimal(b.box.volume).lt(b.required.value))
          return fail(subject, `${print(b.box.volume)} in³, ${print(b.required.value)} in³ needed`, `next box with room to work: ${b.nextBetter}`);
        const says = `${print(b.box.volume)} in³, ${print(b.required.value)} in³ needed`;
        const at = segments.findIndex(({ segment }) => segment.name === b.box.after);
        const others = segments.slice(at, at + 2).some(({ segment }) => (segment.others?.current_carrying ?? 0) > 0);
        if (others)
          return needsPerson(
            subject,
            `${says} by this run alone; conductors of other circuits share its raceway`,
            "add an allowance for each of them that comes into the box: their sizes are not given here",
          );
        return b.box.kind === "conduit-body" && b.box.spliced
          ? needsPerson(
              subject,
              `${says}; splices in a conduit body, 314.16(C)(2)`,
              "read its volume on the body: only one that is marked with it may hold splices",
            )
          : pass(subject, says);
      }),
    ),
};
