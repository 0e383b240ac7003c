import { everyEdition } from "../basis/edition.js";
import type { Check } from "./finding.js";
import { eachCircuit, fail, needsPerson, notApplicable, pass } from "./outcome.js";

export const coverPlate: Check = {
  id: "cover-plate",
  title: "The outlet is weatherproof as its use asks",
  rule: { sections: everyEdition("406.9(B)"), standing: "published" },
  run: eachCircuit(({ circuit, equipment: { kind, receptacle, place } }) => {
    if (receptacle === null) return notApplicable(circuit.name, "hard-wired: no receptacle");
    if (place !== "outdoors") return notApplicable(circuit.name, "not outdoors");
    const why =
      kind === "rv-50" || kind === "rv-30"
        ? "an RV plug stays in unattended"
        : receptacle.amperes <= 20
          ? "a 15 or 20 A receptacle in a wet place has such a cover whether or not a plug is in"
          : "a plug that stays in unattended asks it";
    if (circuit.cover_plate === undefined)
      return needsPerson(circuit.name, "the cover is not named", `${why}: the cover must be weatherproof with the plug in`);
    return circuit.cover_plate === "weatherproof-in-use"
      ? pass(circuit.name, "weatherproof with the plug in")
      : fail(circuit.name, `not weatherproof with the plug in: ${why}`, "use an enclosure listed as weatherproof in use");
  }),
};
