import * as z from "zod";
import { optionalDwellingLoad } from "../service/optional-dwelling.js";
import { calculation } from "./calculation.js";
import { climate } from "./climate-fields.js";
import * as field from "./fields.js";

export const optionalDwellingLoadCalculation = calculation({
  name: "optional-dwelling-load",
  title: "Load of a dwelling, optional method",
  about:
    "First 10 kVA (8 kVA in 2026) whole, the rest at 40 %, and the largest heating or cooling selection. For a supply of 100 A or more that carries the whole load. 220.82.",
  fields: {
    dwelling: z
      .strictObject({
        floorAreaFt2: field.squareFeet("floor by outside dimensions"),
        smallApplianceCircuits: field.count("small-appliance circuits, two at least in a dwelling"),
        laundryCircuits: field.count("laundry circuits", 0),
        appliances: field.list(
          z.strictObject({ name: field.text("what it is"), va: field.voltAmperes("nameplate") }),
          "everything fastened in place or on its own circuit",
          0,
        ),
        evSupply: field.list(field.voltAmperes("nameplate"), "EV supply equipment", 0),
        climate,
      })
      .describe("the dwelling"),
    edition: field.edition,
  },
  example: {
    dwelling: {
      floorAreaFt2: 2000,
      smallApplianceCircuits: 2,
      laundryCircuits: 1,
      appliances: [
        { name: "range", va: 12000 },
        { name: "dryer", va: 5000 },
        { name: "water heater", va: 4500 },
      ],
      evSupply: [],
      climate: [{ kind: "cooling", va: 4800 }],
    },
    edition: "2023",
  },
  run: optionalDwellingLoad,
});
