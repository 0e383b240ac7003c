import * as z from "zod";
import { noncoincidentLoad } from "../service/noncoincident.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const noncoincidentLoadCalculation = calculation({
  name: "noncoincident-load",
  title: "Loads that do not run together",
  about: "The larger of loads unlikely to run together; from 2020 a motor that is not the largest is compared at 125 %. 220.60.",
  fields: {
    loads: field.list(
      z.strictObject({ name: field.text("what it is"), va: field.voltAmperes("load"), motor: field.yesNo("a motor or air-conditioning load") }),
      "loads",
      0,
    ),
    otherMotorVA: field.voltAmperes("largest motor outside the set", "or-zero").optional(),
    edition: field.edition,
  },
  example: {
    loads: [
      { name: "heating", va: 9600, motor: false },
      { name: "cooling", va: 4800, motor: true },
    ],
    edition: "2023",
  },
  run: noncoincidentLoad,
});
