import * as z from "zod";
import { longestRuns } from "../sizing/voltage-drop.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const longestRunCalculation = calculation({
  name: "longest-run",
  title: "Longest run for a voltage drop",
  about: "Longest one-way run of each size, in whole feet rounded down, at which the drop keeps within a per cent of the volts.",
  fields: {
    current: field.amperes("load current"),
    volts: field.volts("circuit"),
    limitPercent: field.percent("greatest drop").max(50),
    material: field.material,
    sizes: field.list(field.size, "sizes to try"),
    method: z.enum(["K", "dc-resistance"]).describe("K constant, or Table 8 resistance"),
    edition: field.edition,
  },
  example: { current: 40, volts: 240, limitPercent: 3, material: "copper", sizes: ["8", "6", "4"], method: "dc-resistance", edition: "2023" },
  run: longestRuns,
});
