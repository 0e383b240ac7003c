import { everyEdition } from "../basis/edition.js";
import { decimal, print } from "../quantity.js";
import type { Check } from "./finding.js";
import { fail, needsPerson, pass } from "./outcome.js";

export const boxVolume: Check = {
  id: "box-volume",
  title: "Each box holds what is in it",
  rule: { sections: everyEdition("314.16"), standing: "published" },
  run: ({ design }) =>
    [...design.feeders, ...design.circuits].flatMap(({ run, boxes }) =>
      boxes.map((b) => {
        const subject = `${run.name}: ${b.box.name}`;
        if (b.byDimensions)
          return needsPerson(
            subject,
            "conductors of 4 AWG or larger: the box is sized by its dimensions",
            `measure at least ${b.required.value} in from each raceway entry to the opposite wall`,
          );
        return decimal(b.box.volume).lt(b.required.value)
          ? fail(subject, `${print(b.box.volume)} in³, ${print(b.required.value)} in³ needed`, `next box with room to work: ${b.nextBetter}`)
          : pass(subject, `${print(b.box.volume)} in³, ${print(b.required.value)} in³ needed`);
      }),
    ),
};
