import * as z from "zod";
import { expectedReadings } from "../readings/expected.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";
import { outletCircuit } from "./outlet-circuit.js";
import { outlet, pair, stretches } from "./outlet-fields.js";

export const expectedReadingsCalculation = calculation({
  name: "expected-readings",
  title: "Expected meter readings at an outlet",
  about: "Bands of volts with nothing plugged in and, when a load is stated, with it on. ANSI C84.1 Range A and a simulation of the circuit.",
  fields: {
    outlet,
    stretches,
    load: z
      .strictObject({
        amperes: field.amperes("at the rated volts"),
        across: pair.describe("terminals it is between"),
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
