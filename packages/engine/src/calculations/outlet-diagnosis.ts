import * as z from "zod";
import { diagnose } from "../readings/diagnose.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";
import { outletCircuit } from "./outlet-circuit.js";

export const outletDiagnosisCalculation = calculation({
  name: "outlet-diagnosis",
  title: "Diagnosis of an outlet from its readings",
  about: "Passes, asks for one more reading, or ranks the likely faults by distance to simulated patterns. An aid: a person with a meter decides.",
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
    idle: z
      .partialRecord(z.enum(["L1-N", "L2-N", "L1-L2", "L1-G", "L2-G", "N-G"]), field.volts("as read", "or-zero"))
      .describe("volts with nothing plugged in"),
    loaded: z
      .strictObject({
        amperes: field.amperes("the load"),
        across: z.enum(["L1-N", "L2-N", "L1-L2", "L1-G", "L2-G", "N-G"]).describe("terminals it is between"),
        readings: z.partialRecord(z.enum(["L1-N", "L2-N", "L1-L2", "L1-G", "L2-G", "N-G"]), field.volts("as read", "or-zero")).describe("volts with it on"),
      })
      .optional()
      .describe("readings under a load"),
    meter: z.enum(["high-impedance", "low-impedance"]).optional().describe("setting of the meter"),
    edition: field.edition,
  },
  example: {
    outlet: "four-wire",
    stretches: [{ size: "6", material: "copper", grounding: "10", feet: 80 }],
    idle: { "L1-N": 121, "L2-N": 121, "L1-L2": 242, "L1-G": 121, "L2-G": 121, "N-G": 0.1 },
    edition: "2023",
  },
  run: ({ id, idle, loaded, meter, ...circuit }) => ({ id, ...diagnose({ circuit: outletCircuit(circuit), idle, loaded, meter }) }),
});
