import { everyEdition } from "../basis/edition.js";
import type { Check } from "./finding.js";
import { fail, pass } from "./outcome.js";

export const boxWet: Check = {
  id: "box-wet",
  title: "Boxes outdoors are marked for wet locations",
  rule: { sections: everyEdition("314.15"), standing: "published" },
  run: ({ design }) =>
    [...design.feeders, ...design.circuits].flatMap((made) =>
      made.boxes.map((b) => {
        const subject = `${made.run.name}: ${b.box.name}`;
        // The box of an outdoor receptacle is wet though its cable comes straight through the wall.
        const outdoorDevice = b.box.device && made.kind === "circuit" && made.equipment.place === "outdoors";
        const wet = made.segments.find((s) => s.segment.name === b.box.after)?.wet || outdoorDevice;
        if (!wet) return pass(subject, "in a dry place");
        return b.box.wet_location
          ? pass(subject, "marked for wet locations")
          : fail(subject, "outdoors and not marked for wet locations", "use a box listed for wet locations, entered from below or with a listed hub");
      }),
    ),
};
