import { everyEdition } from "../basis/edition.js";
import type { Check } from "./finding.js";
import { eachCircuit, fail, needsPerson, notApplicable, pass } from "./outcome.js";

export const evDisconnect: Check = {
  id: "ev-disconnect",
  title: "EV supply equipment has its disconnect",
  rule: { sections: everyEdition("625.43"), standing: "published" },
  run: eachCircuit(({ circuit, equipment: { disconnect } }, { basis }) => {
    if (circuit.serves !== "ev-supply") return notApplicable(circuit.name, "not EV supply equipment");
    if (disconnect.required !== "yes") return notApplicable(circuit.name, disconnect.says);
    if (circuit.disconnect === "none") return fail(circuit.name, "no disconnecting means", `add one: ${disconnect.says}`);
    return circuit.disconnect === undefined || circuit.disconnect === "plug"
      ? needsPerson(
          circuit.name,
          `the ${basis.edition} edition asks a disconnecting means for this equipment`,
          "readily accessible and lockable open, shown on the one-line",
        )
      : pass(circuit.name, `${circuit.disconnect}, as entered; ${disconnect.says}`);
  }),
};
