import { everyEdition } from "../basis/edition.js";
import type { Check } from "./finding.js";
import { fail, pass } from "./outcome.js";

export const boxWet: Check = {
  id: "box-wet",
  title: "Boxes outdoors are marked for wet locations",
  rule: { sections: everyEdition("314.15"), standing: "published" },
  run: ({ design }) =>
    [...design.feeders, ...design.circuits].flatMap(({ run, boxes, segments }) =>
      boxes.map((b) => {
        const subject = `${run.name}: ${b.box.name}`;
        const wet = segments.find((s) => s.segment.name === b.box.after)?.wet || b.box.device;
        if (!wet) return pass(subject, "in a dry place");
        return b.box.wet_location
          ? pass(subject, "marked for wet locations")
          : fail(subject, "outdoors and not marked for wet locations", "use a box listed for wet locations, entered from below or with a listed hub");
      }),
    ),
};
