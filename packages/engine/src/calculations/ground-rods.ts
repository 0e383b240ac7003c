import { rodsNeeded } from "../sizing/electrodes.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const groundRodsCalculation = calculation({
  name: "ground-rods",
  title: "Ground rods needed",
  about: "Rods, pipes or plates: two, unless one alone is measured at 25 ohms to earth or less. 250.53(A)(2).",
  fields: { measuredOhms: field.ohms("resistance to earth of one rod as measured, null where nobody measured", "or-zero").nullable(), edition: field.edition },
  example: { measuredOhms: null, edition: "2023" },
  run: rodsNeeded,
});
