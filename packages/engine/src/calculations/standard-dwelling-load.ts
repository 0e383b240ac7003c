import * as z from "zod";
import { standardDwellingLoad } from "../service/standard-dwelling.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const standardDwellingLoadCalculation = calculation({
  name: "standard-dwelling-load",
  title: "Load of a dwelling, standard method",
  about:
    "Lighting, appliances, cooking and dryers with their demands, the larger of heating and cooling, EV supply, other loads whole, a quarter of the largest motor. Article 220 Part III.",
  fields: {
    dwelling: z
      .strictObject({
        floorAreaFt2: field.squareFeet("floor by outside dimensions"),
        smallApplianceCircuits: field.count("small-appliance circuits, two at least in a dwelling"),
        laundryCircuits: field.count("laundry circuits", 0),
        appliances: field.list(
          z.strictObject({
            name: field.text("what it is"),
            va: field.voltAmperes("nameplate"),
            motor: field.yesNo("a motor, or a load that is one").optional(),
          }),
          "appliances fastened in place",
          0,
        ),
        cooking: field.list(field.voltAmperes("nameplate"), "household cooking appliances", 0),
        dryers: field.list(field.voltAmperes("nameplate"), "electric clothes dryers", 0),
        heatingVA: field.voltAmperes("heating", "or-zero"),
        heatPumpVA: field.voltAmperes("the largest heat pump that is part of the heating", "or-zero").optional(),
        coolingVA: field.voltAmperes("cooling", "or-zero"),
        evSupply: field.list(field.voltAmperes("nameplate, null where not known").nullable(), "EV supply equipment", 0),
        others: field.list(
          z.strictObject({
            name: field.text("what it is"),
            va: field.voltAmperes("nameplate"),
            motor: field.yesNo("a motor, or a load that is one").optional(),
          }),
          "loads with no demand factor",
          0,
        ),
      })
      .describe("the dwelling"),
    edition: field.edition,
  },
  example: {
    dwelling: {
      floorAreaFt2: 2000,
      smallApplianceCircuits: 2,
      laundryCircuits: 1,
      appliances: [{ name: "water heater", va: 4500 }],
      cooking: [12000],
      dryers: [5000],
      heatingVA: 9600,
      coolingVA: 4800,
      evSupply: [9600],
      others: [{ name: "hot tub", va: 9600 }],
    },
    edition: "2023",
  },
  run: standardDwellingLoad,
});
