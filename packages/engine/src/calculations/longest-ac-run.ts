import * as z from "zod";
import { longestAcRuns } from "../sizing/ac-longest-run.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const longestAcRunCalculation = calculation({
  name: "longest-ac-run",
  title: "Longest run for a voltage drop, by impedance",
  about: "Longest one-way run of each size, in whole feet rounded down, at which the drop by Table 9 keeps within a per cent of the source volts.",
  fields: {
    current: field.amperes("load current"),
    powerFactor: field.factor("power factor of the load, lagging", 1),
    sourceVolts: field.volts("source, between the two conductors of the loop"),
    limitPercent: field.percent("greatest drop").max(50),
    like: z
      .strictObject({
        material: field.material,
        conduit: field.conduit,
        celsius: field.celsius("conductor temperature, 75 when left out").optional(),
        parallel: field.count("conductors in parallel, 1 when left out").optional(),
      })
      .describe("what every size is tried as"),
    sizes: field.list(field.size, "sizes to try"),
    method: z.enum(["ac-effective", "ac-exact"]).describe("effective: R cos θ + X sin θ; exact: solved as phasors"),
    edition: field.edition,
  },
  example: {
    current: 40,
    powerFactor: 0.9,
    sourceVolts: 240,
    limitPercent: 3,
    like: { material: "copper", conduit: "PVC" },
    sizes: ["8", "6", "4"],
    method: "ac-effective",
    edition: "2023",
  },
  run: longestAcRuns,
});
