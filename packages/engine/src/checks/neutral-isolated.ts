import { everyEdition } from "../basis/edition.js";
import type { Check } from "./finding.js";
import { eachCircuit, needsPerson } from "./outcome.js";

export const neutralIsolated: Check = {
  id: "neutral-isolated",
  title: "Neutral and equipment ground are not joined at the outlet",
  rule: { sections: everyEdition("250.142(B)"), standing: "published" },
  run: eachCircuit(({ circuit }) =>
    needsPerson(
      circuit.name,
      "the bond is made at the service only",
      "no strap or jumper between neutral and ground at the outlet; a ground rod there never replaces the equipment grounding conductor",
    ),
  ),
};
