import { ampacity } from "../sizing/ampacity.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const ampacityCalculation = calculation({
  name: "ampacity",
  title: "Ampacity of a conductor",
  about:
    "Ampacity of one size, corrected for ambient and adjusted for the count of current-carrying conductors, held to its terminals. 310.15, 310.16, 110.14(C).",
  fields: {
    size: field.size,
    material: field.material,
    insulation: field.insulation,
    ambientC: field.celsius("air around the conductor"),
    currentCarrying: field.count("current-carrying conductors together"),
    terminalC: field.terminalC,
    edition: field.edition,
  },
  example: { size: "6", material: "copper", insulation: "THWN-2", ambientC: 38, currentCarrying: 3, terminalC: 75, edition: "2023" },
  none: "There is no ampacity: a blank cell, an ambient too hot for the insulation, or a size the cable is not made in.",
  run: ampacity,
});
