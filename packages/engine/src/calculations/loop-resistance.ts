import * as z from "zod";
import { loopResistance } from "../readings/loop-resistance.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";
import { outletCircuit } from "./outlet-circuit.js";

export const loopResistanceCalculation = calculation({
  name: "loop-resistance",
  title: "Loop resistance from two readings",
  about: "From an idle and a loaded reading between the same terminals, compared with the simulated loop.",
  fields: {
    outlet: z
      .enum(["four-wire", "one-hot", "two-hot"])
      .describe("what reaches the outlet besides the ground: four-wire is two hots and neutral, one-hot a hot and neutral, two-hot two hots"),
    stretches: field.list(
      z.strictObject({
        size: field.size,
        material: field.material,
        grounding: field.size.describe("size of the grounding conductor"),
        groundingMaterial: field.material.optional(),
        feet: field.feet("one way"),
      }),
      "stretches of the run in order",
    ),
    across: z.enum(["L1-N", "L2-N", "L1-L2", "L1-G", "L2-G", "N-G"]).describe("terminals of the readings"),
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
