import { everyEdition } from "../basis/edition.js";
import { decimal, print } from "../quantity.js";
import type { Check } from "./finding.js";
import { eachCircuit, needsPerson, notApplicable, pass } from "./outcome.js";

export const generatorCapacity: Check = {
  id: "generator-capacity",
  title: "The generator carries what is put on it",
  rule: { sections: everyEdition("702.4"), standing: "one-source" },
  run: eachCircuit(({ circuit, equipment: { generator } }, { design }) => {
    if (generator === null) return notApplicable(circuit.name, "no generator inlet");
    const automatic = circuit.nameplate?.transfer?.startsWith("automatic") ?? false;
    if (!automatic) return pass(circuit.name, "put over by hand: its user chooses what to run, and must keep it within the generator");
    const gives = circuit.nameplate?.load ?? circuit.current * 240;
    const house = design.service.with.value;
    return decimal(house).gt(gives)
      ? needsPerson(
          circuit.name,
          `put over by itself, the house at ${print(house)} VA is more than the ${print(gives)} VA of the generator`,
          "listed equipment that sheds load, or transfer of a panel with chosen loads alone",
        )
      : pass(circuit.name, `${print(gives)} VA carries the house at ${print(house)} VA`);
  }),
};
