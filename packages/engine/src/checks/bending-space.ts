import { everyEdition } from "../basis/edition.js";
import { print } from "../quantity.js";
import type { Check } from "./finding.js";
import { foundOnRuns, needsPerson } from "./outcome.js";

export const bendingSpace: Check = {
  id: "bending-space",
  title: "Large conductors have room to bend at their terminals",
  rule: { sections: everyEdition("312.6(B)"), standing: "published" },
  run: foundOnRuns(
    ({ run, boxes }) =>
      boxes.flatMap(({ box, bending }) =>
        bending === null
          ? []
          : [
              needsPerson(
                `${run.name}: ${box.name}`,
                `${bending.label}: ${print(bending.value)} in`,
                `measure ${print(bending.value)} in from each terminal to the wall it faces`,
              ),
            ],
      ),
    "no terminals with conductors of 4 AWG or larger in a box of its own",
  ),
};
