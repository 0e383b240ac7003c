import { loopResistance } from "../readings/loop-resistance.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";
import { outletCircuit } from "./outlet-circuit.js";
import { outlet, pair, stretches } from "./outlet-fields.js";

export const loopResistanceCalculation = calculation({
  name: "loop-resistance",
  title: "Loop resistance from two readings",
  about: "From an idle and a loaded reading between the same terminals, compared with the simulated loop.",
  fields: {
    outlet,
    stretches,
    across: pair.describe("terminals of the readings"),
    idleVolts: field.volts("read with nothing on"),
    loadedVolts: field.volts("read with the load on"),
    amperes: field.amperes("the load"),
    edition: field.edition,
  },
  example: {
    outlet: "four-wire",
    stretches: [{ size: "6", material: "copper", grounding: "10", feet: 80 }],
    across: "L1-N",
    idleVolts: 121.4,
    loadedVolts: 119.6,
    amperes: 12,
    edition: "2023",
  },
  run: ({ across, idleVolts, loadedVolts, amperes, ...circuit }) => loopResistance(outletCircuit(circuit), { across, idleVolts, loadedVolts, amperes }),
});
