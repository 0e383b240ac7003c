import { spaCircuit } from "../equipment/spa.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const spaCircuitCalculation = calculation({
  name: "spa-circuit",
  title: "Circuit of a hot tub or spa",
  about: "One-family dwelling, 240 V; the marked device governs, without it the load counts at 125 %. 680.10, 680.42.",
  fields: {
    amperes: field.amperes("nameplate"),
    marked: field.amperes("device that the nameplate or instructions name").optional(),
    neutral: field.yesNo("whether it needs a neutral"),
    integralGfci: field.yesNo("listed with its own ground-fault protection and marked so"),
    fieldAssembledHeater: field.amperes("heater of a field-assembled tub").optional(),
    edition: field.edition,
  },
  example: { amperes: 40, marked: 50, neutral: true, integralGfci: false, edition: "2023" },
  run: spaCircuit,
});
