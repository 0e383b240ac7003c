import * as z from "zod";
import { fixedApplianceDemand } from "../service/fixed-appliances.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const fixedApplianceDemandCalculation = calculation({
  name: "fixed-appliance-demand",
  title: "Demand of appliances fastened in place",
  about: "75 % of the nameplates where four or more are served. Not ranges, dryers, heating, cooling or EV supply. 220.53.",
  fields: {
    appliances: field.list(
      z.strictObject({ name: field.text("what it is"), va: field.voltAmperes("nameplate"), motor: field.yesNo("a motor, or a load that is one").optional() }),
      "appliances",
    ),
    edition: field.edition,
  },
  example: {
    appliances: [
      { name: "water heater", va: 4500 },
      { name: "dishwasher", va: 1200 },
      { name: "disposer", va: 900, motor: true },
      { name: "trash compactor", va: 700 },
    ],
    edition: "2023",
  },
  run: fixedApplianceDemand,
});
