import * as z from "zod";
import { mixedArea } from "../sizing/cable-fill.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const mixedConductorAreaCalculation = calculation({
  name: "mixed-conductor-area",
  title: "Area of cables and conductors together",
  about: "Cross section of multiconductor cables and single conductors in one raceway, and how many conductors they count as. Chapter 9 Notes and Table 5.",
  fields: {
    cables: field.list(
      z.strictObject({
        name: field.text("what the cable is called"),
        majorIn: field.inches("diameter, or the wider dimension of a flat one"),
        count: field.count("how many of them"),
      }),
      "multiconductor cables",
      0,
    ),
    conductors: field.list(
      z.strictObject({
        size: field.size,
        insulation: field.tableInsulation,
        count: field.count("how many of them"),
        compact: field.yesNo("compact-stranded").optional(),
      }),
      "single conductors",
      0,
    ),
    edition: field.edition,
  },
  example: { cables: [{ name: "control cable", majorIn: 0.42, count: 1 }], conductors: [{ size: "8", insulation: "THWN-2", count: 3 }], edition: "2023" },
  none: "The tables as entered lack a conductor.",
  run: mixedArea,
});
