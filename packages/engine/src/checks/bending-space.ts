import { everyEdition } from "../basis/edition.js";
import { print } from "../quantity.js";
import type { Check } from "./finding.js";
import { needsPerson, notApplicable } from "./outcome.js";

export const bendingSpace: Check = {
  id: "bending-space",
  title: "Large conductors have room to bend at their terminals",
  rule: { sections: everyEdition("312.6(B)"), standing: "published" },
  run: ({ design }) =>
    [...design.feeders, ...design.circuits].flatMap(({ run, boxes }) => {
      const found = boxes.flatMap(({ box, bending }) =>
        bending === null
          ? []
          : [
              needsPerson(
                `${run.name}: ${box.name}`,
                `${bending.label}: ${print(bending.value)} in`,
                `measure ${print(bending.value)} in from each terminal to the wall it faces`,
              ),
            ],
      );
      return found.length > 0 ? found : [notApplicable(run.name, "no terminals with conductors of 4 AWG or larger in a box of its own")];
    }),
};
