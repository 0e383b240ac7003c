import { conductorWeight } from "../sizing/conductor-weight.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const conductorWeightCalculation = calculation({
  name: "conductor-weight",
  title: "Weight of a conductor",
  about: "Weight of an insulated conductor a foot from its circular mils and area; a maker's figure is better.",
  fields: { size: field.size, material: field.material, insulation: field.tableInsulation, edition: field.edition },
  example: { size: "2/0", material: "copper", insulation: "THWN-2", edition: "2023" },
  none: "The tables as entered lack the conductor.",
  run: conductorWeight,
});
