import * as z from "zod";
import { conductorArea } from "../sizing/raceway-fill.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const conductorAreaCalculation = calculation({
  name: "conductor-area",
  title: "Area of conductors",
  about: "Total cross section of single conductors. Chapter 9 Table 5.",
  fields: {
    conductors: field.list(z.strictObject({ size: field.size, insulation: field.insulation, count: field.count("how many of them") }), "conductors"),
    othersIn2: field.squareInches("conductors of other circuits as measured", "or-zero"),
    edition: field.edition,
  },
  example: {
    conductors: [
      { size: "6", insulation: "THWN-2", count: 3 },
      { size: "10", insulation: "THWN-2", count: 1 },
    ],
    othersIn2: 0,
    edition: "2023",
  },
  none: "Table 5 as entered has no area for a conductor; a cable is not in it.",
  run: conductorArea,
});
