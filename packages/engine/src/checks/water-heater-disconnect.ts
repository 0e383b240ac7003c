import { everyEdition } from "../basis/edition.js";
import type { Check } from "./finding.js";
import { eachCircuit, fail, needsPerson, notApplicable, pass } from "./outcome.js";

export const waterHeaterDisconnect: Check = {
  id: "water-heater-disconnect",
  title: "A water heater has a disconnect in sight or a breaker that locks open",
  rule: { sections: everyEdition("422.31(B)"), standing: "memory" },
  run: eachCircuit(({ circuit, equipment: { kind, disconnect } }) => {
    if (kind !== "water-heater") return notApplicable(circuit.name, "not a water heater");
    if (circuit.disconnect === undefined) return needsPerson(circuit.name, "the disconnecting means is not named", disconnect.says);
    return circuit.disconnect === "none" || circuit.disconnect === "plug"
      ? fail(circuit.name, `its disconnecting means: ${circuit.disconnect}`, `add ${disconnect.says}`)
      : pass(circuit.name, `${circuit.disconnect}, as entered`);
  }),
};
