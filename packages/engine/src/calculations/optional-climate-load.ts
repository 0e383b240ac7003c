import { optionalClimateLoad } from "../service/optional-climate.js";
import { calculation } from "./calculation.js";
import { climate } from "./climate-fields.js";
import * as field from "./fields.js";

export const optionalClimateLoadCalculation = calculation({
  name: "optional-climate-load",
  title: "Heating and cooling by the optional method",
  about: "The largest of the heating and cooling selections. 220.82(C).",
  fields: {
    loads: climate,
    edition: field.edition,
  },
  example: {
    loads: [
      { kind: "cooling", va: 4800 },
      { kind: "space-heating", va: 9600, separatelyControlled: 5 },
    ],
    edition: "2023",
  },
  run: optionalClimateLoad,
});
