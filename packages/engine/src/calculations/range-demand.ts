import { rangeDemand } from "../service/range-demand.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const rangeDemandCalculation = calculation({
  name: "range-demand",
  title: "Demand of cooking appliances",
  about: "Household ranges, ovens and cooktops on a feeder or service; the lesser where two columns serve. 220.55 with Notes 1 to 3.",
  fields: { appliances: field.list(field.voltAmperes("nameplate of one appliance"), "cooking appliances"), edition: field.edition },
  example: { appliances: [14000], edition: "2023" },
  run: rangeDemand,
});
