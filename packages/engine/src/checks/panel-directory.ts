import { everyEdition } from "../basis/edition.js";
import type { Check } from "./finding.js";
import { eachCircuit, needsPerson } from "./outcome.js";

export const panelDirectory: Check = {
  id: "panel-directory",
  title: "The directory names the new circuit",
  rule: { sections: everyEdition("408.4(A)"), standing: "published" },
  run: eachCircuit(({ circuit }) =>
    needsPerson(circuit.name, "the directory is written on site", `write "${circuit.name}" at space ${circuit.breaker.spaces.join(" and ")}, and where it is`),
  ),
};
