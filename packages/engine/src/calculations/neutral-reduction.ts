import { neutralOver200 } from "../service/neutral-load.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const neutralReductionCalculation = calculation({
  name: "neutral-reduction",
  title: "Neutral over 200 A",
  about: "200 A whole, 70 % of the rest. 220.61(B)(2).",
  fields: { amperes: field.amperes("neutral current"), edition: field.edition },
  example: { amperes: 260, edition: "2023" },
  run: neutralOver200,
});
