import { everyEdition } from "../basis/edition.js";
import type { Check } from "./finding.js";
import { eachCircuit, needsPerson, notApplicable } from "./outcome.js";

export const spaBonding: Check = {
  id: "spa-bonding",
  title: "Metal and perimeter of a spa are bonded, or the exception is met",
  rule: { sections: everyEdition("680.42(B), 680.26"), standing: "one-source" },
  run: eachCircuit(({ circuit, equipment: { kind } }) => {
    if (kind !== "spa") return notApplicable(circuit.name, "not a spa");
    return circuit.nameplate?.self_contained
      ? needsPerson(
          circuit.name,
          "a listed self-contained unit: the perimeter need not be bonded where every condition of the exception is met",
          "listed for use above ground, set on or above the floor by its instructions, and its top rim at least 28 in above every perimeter surface within 30 in",
        )
      : needsPerson(
          circuit.name,
          "equipotential bonding is asked",
          "8 AWG solid copper joins metal within 5 ft and the perimeter surface for 3 ft around; inspected before it is covered",
        );
  }),
};
