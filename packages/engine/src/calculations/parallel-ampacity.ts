import { parallelAmpacity } from "../sizing/parallel.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";
import { statedValue } from "./stated-value.js";

export const parallelAmpacityCalculation = calculation({
  name: "parallel-ampacity",
  title: "Ampacity of parallel sets",
  about: "Ampacity of one conductor, already corrected and held to its terminals, times the sets. 310.10(G).",
  fields: { eachAmperes: field.amperes("ampacity of one conductor"), size: field.size, sets: field.count("sets in parallel"), edition: field.edition },
  example: { eachAmperes: 200, size: "3/0", sets: 2, edition: "2023" },
  none: "Conductors smaller than 1/0 AWG may not be joined in parallel.",
  run: ({ eachAmperes, ...given }) => parallelAmpacity({ ...given, each: statedValue(`${given.id}.each`, "Ampacity of one conductor", eachAmperes, "A") }),
});
