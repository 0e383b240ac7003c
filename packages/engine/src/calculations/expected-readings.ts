import * as z from "zod";
import { expectedReadings } from "../readings/expected.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";
import { outletCircuit } from "./outlet-circuit.js";

export const expectedReadingsCalculation = calculation({
  name: "expected-readings",
  title: "Expected meter readings at an outlet",
  about: "Bands of volts with nothing plugged in and, when a load is stated, with it on. ANSI C84.1 Range A and a simulation of the circuit.",
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
    load: z
      .strictObject({
        amperes: field.amperes("at the rated volts"),
        across: z.enum(["L1-N", "L2-N", "L1-L2", "L1-G", "L2-G", "N-G"]).describe("terminals it is between"),
      })
      .nullable()
      .describe("load that is on, null for none"),
    edition: field.edition,
  },
  example: {
    outlet: "four-wire",
    stretches: [{ size: "6", material: "copper", grounding: "10", feet: 80 }],
    load: { amperes: 12, across: "L1-N" },
    edition: "2023",
  },
  run: ({ id, load, ...circuit }) => ({ id, bands: expectedReadings(outletCircuit(circuit), load) }),
});
