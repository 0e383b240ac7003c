import { dryerDemand } from "../service/dryer-demand.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const dryerDemandCalculation = calculation({
  name: "dryer-demand",
  title: "Demand of clothes dryers",
  about: "Each 5,000 VA or nameplate, whichever is larger, then the per cent of the table. 220.54.",
  fields: { dryers: field.list(field.voltAmperes("nameplate of one dryer"), "household electric dryers"), edition: field.edition },
  example: { dryers: [5600], edition: "2023" },
  run: dryerDemand,
});
