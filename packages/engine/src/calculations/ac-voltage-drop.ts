import * as z from "zod";
import { acDrop } from "../sizing/ac-drop.js";
import { calculation } from "./calculation.js";
import { segments } from "./drop-fields.js";
import * as field from "./fields.js";

export const acVoltageDropCalculation = calculation({
  name: "ac-voltage-drop",
  title: "Voltage drop by impedance",
  about: "Volts lost out and back along a chain of segments, by Chapter 9 Table 9 resistance and reactance.",
  fields: {
    current: field.amperes("load current"),
    powerFactor: field.factor("power factor of the load, lagging", 1),
    sourceVolts: field.volts("source, between the two conductors of the loop"),
    segments,
    method: z.enum(["ac-effective", "ac-exact"]).describe("effective: R cos θ + X sin θ; exact: solved as phasors"),
    through: z.enum(["neutral", "hots"]).optional().describe("what the current returns in"),
    edition: field.edition,
  },
  example: {
    current: 40,
    powerFactor: 0.9,
    segments: [{ size: "6", material: "copper", conduit: "PVC", feet: 120 }],
    method: "ac-exact",
    sourceVolts: 240,
    edition: "2023",
  },
  none: "Table 9 as entered lacks a conductor, or the source cannot drive the current through so long a run.",
  run: (given) => acDrop({ ...given, label: "Voltage drop" }),
});
