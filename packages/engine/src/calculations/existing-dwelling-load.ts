import * as z from "zod";
import { existingDwellingLoad } from "../service/existing-dwelling.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const existingDwellingLoadCalculation = calculation({
  name: "existing-dwelling-load",
  title: "Load of an existing dwelling",
  about: "First 8 kVA whole, the rest at 40 %; heating or cooling that is being added counts whole. 220.83.",
  fields: {
    dwelling: z
      .strictObject({
        floorAreaFt2: field.squareFeet("floor area"),
        smallApplianceCircuits: field.count("small-appliance circuits"),
        laundryCircuits: field.count("laundry circuits", 0),
        appliancesVA: field.voltAmperes("appliances, nameplates together", "or-zero"),
        heatingOrCoolingVA: field.voltAmperes("largest of heating and cooling", "or-zero"),
        heatingOrCoolingAdded: field.yesNo("whether heating or cooling is being added"),
      })
      .describe("the dwelling"),
    edition: field.edition,
  },
  example: {
    dwelling: { floorAreaFt2: 1600, smallApplianceCircuits: 2, laundryCircuits: 1, appliancesVA: 18000, heatingOrCoolingVA: 6000, heatingOrCoolingAdded: true },
    edition: "2023",
  },
  run: existingDwellingLoad,
});
