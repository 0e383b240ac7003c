import * as z from "zod";
import { generalLightingLoad } from "../service/lighting-demand.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const generalLightingLoadCalculation = calculation({
  name: "general-lighting-load",
  title: "General lighting of a dwelling",
  about: "Connected load: lighting by area, small-appliance and laundry circuits, and their sum. 220.41, 220.52.",
  fields: {
    dwelling: z
      .strictObject({
        floorAreaFt2: field.squareFeet("floor by outside dimensions"),
        smallApplianceCircuits: field.count("small-appliance circuits, two at least in a dwelling"),
        laundryCircuits: field.count("laundry circuits", 0),
      })
      .describe("the dwelling"),
    edition: field.edition,
  },
  example: { dwelling: { floorAreaFt2: 2000, smallApplianceCircuits: 2, laundryCircuits: 1 }, edition: "2023" },
  run: generalLightingLoad,
});
