import { everyEdition } from "../basis/edition.js";
import { OUTLETS } from "../outlet.js";
import type { Check } from "./finding.js";
import { eachCircuit, fail, needsPerson, notApplicable, pass } from "./outcome.js";

export const coverPlate: Check = {
  id: "cover-plate",
  title: "The outlet is weatherproof as its use asks",
  rule: { sections: everyEdition("406.9(B)(2)"), standing: "published" },
  run: eachCircuit(({ circuit }) => {
    if (OUTLETS[circuit.serves].receptacleAmperes === null) return notApplicable(circuit.name, "hard-wired: no receptacle");
    if (circuit.cover_plate === undefined)
      return needsPerson(circuit.name, "the cover is not named", "an RV plug stays in unattended: the cover must be weatherproof with the plug in");
    return circuit.cover_plate === "weatherproof-in-use"
      ? pass(circuit.name, "weatherproof with the plug in")
      : fail(circuit.name, "not weatherproof with the plug in, and an RV plug stays in unattended", "use an enclosure listed as weatherproof in use");
  }),
};
