import * as z from "zod";
import { diagnose } from "../readings/diagnose.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";
import { outletCircuit } from "./outlet-circuit.js";
import { outlet, pair, stretches } from "./outlet-fields.js";

export const outletDiagnosisCalculation = calculation({
  name: "outlet-diagnosis",
  title: "Diagnosis of an outlet from its readings",
  about: "Passes, asks for one more reading, or ranks the likely faults by distance to simulated patterns. An aid: a person with a meter decides.",
  fields: {
    outlet,
    stretches,
    idle: z.partialRecord(pair, field.volts("as read", "or-zero")).describe("volts with nothing plugged in"),
    loaded: z
      .strictObject({
        amperes: field.amperes("the load"),
        across: pair.describe("terminals it is between"),
        readings: z.partialRecord(pair, field.volts("as read", "or-zero")).describe("volts with it on"),
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
