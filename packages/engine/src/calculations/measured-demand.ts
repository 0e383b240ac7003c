import { measuredDemand } from "../service/measured-demand.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const measuredDemandCalculation = calculation({
  name: "measured-demand",
  title: "Existing demand from a measurement",
  about: "125 % of a measured peak. 220.87.",
  fields: { peakVA: field.voltAmperes("measured peak"), edition: field.edition },
  example: { peakVA: 9200, edition: "2023" },
  run: measuredDemand,
});
