import { everyEdition } from "../basis/edition.js";
import type { Check } from "./finding.js";
import { eachCircuit, fail, needsPerson, notApplicable, pass } from "./outcome.js";

export const rangeDryerFourWire: Check = {
  id: "range-dryer-four-wire",
  title: "Range and dryer have four wires, the frame off the neutral",
  rule: { sections: everyEdition("250.140"), standing: "published" },
  run: eachCircuit(({ circuit, equipment: { kind, receptacle } }) => {
    if (kind !== "range" && kind !== "dryer") return notApplicable(circuit.name, "neither range nor dryer");
    if (receptacle !== null && receptacle.wires !== 4)
      return fail(circuit.name, `a ${receptacle.says} has no place for a neutral and an equipment ground both`, "use a four-wire 125/250 V receptacle");
    const wires = circuit.nameplate?.frame_wires;
    if (wires === undefined)
      return needsPerson(
        circuit.name,
        "four wires to the outlet; the appliance's cord is not told",
        "fit a four-wire cord and take out the strap from neutral to frame",
      );
    return wires === 4
      ? pass(circuit.name, "four wires through to the appliance; its bonding strap is out")
      : fail(circuit.name, "a three-wire cord joins the frame to the neutral", "fit a four-wire cord and take out the strap from neutral to frame");
  }),
};
