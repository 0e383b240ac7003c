import { dwellingServiceConductor } from "../sizing/dwelling-service.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const dwellingServiceConductorCalculation = calculation({
  name: "dwelling-service-conductor",
  title: "Service conductor of a dwelling",
  about: "Least conductor for a one-family dwelling service or its main feeder: 83 % of the rating, where no correction or adjustment applies. 310.12.",
  fields: { rating: field.amperes("service rating"), material: field.material, edition: field.edition },
  example: { rating: 200, material: "aluminum", edition: "2023" },
  run: dwellingServiceConductor,
});
