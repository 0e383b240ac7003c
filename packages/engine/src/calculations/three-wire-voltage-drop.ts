import * as z from "zod";
import { threeWireDrops } from "../sizing/ac-drop.js";
import { calculation } from "./calculation.js";
import { segments } from "./drop-fields.js";
import * as field from "./fields.js";

export const threeWireVoltageDropCalculation = calculation({
  name: "three-wire-voltage-drop",
  title: "Voltage drop of a 120/240 V three-wire run",
  about: "Two drops by Table 9: a balanced load on the line-to-line volts, and the worst leg with all its current back through the neutral.",
  fields: {
    current: field.amperes("load current"),
    powerFactor: field.factor("power factor of the load, lagging", 1),
    lineToLineVolts: field.volts("source, line to line"),
    segments,
    method: z.enum(["ac-effective", "ac-exact"]).describe("effective: R cos θ + X sin θ; exact: solved as phasors"),
    edition: field.edition,
  },
  example: {
    current: 40,
    powerFactor: 0.9,
    segments: [{ size: "6", material: "copper", conduit: "PVC", feet: 120 }],
    method: "ac-exact",
    lineToLineVolts: 240,
    edition: "2023",
  },
  none: "Table 9 as entered lacks a conductor, or the source cannot drive the current through so long a run.",
  run: (given) => threeWireDrops({ ...given, label: "Voltage drop" }),
});
