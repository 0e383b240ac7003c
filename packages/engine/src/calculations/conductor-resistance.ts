import { dcResistance } from "../sizing/resistance.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const conductorResistanceCalculation = calculation({
  name: "conductor-resistance",
  title: "Resistance of a run",
  about: "Direct-current resistance of one way of a run at a conductor temperature. Chapter 9 Table 8.",
  fields: {
    size: field.size,
    material: field.material,
    celsius: field.celsius("conductor temperature"),
    feet: field.feet("one way"),
    parallel: field.count("conductors in parallel, 1 when left out").optional(),
    solid: field.yesNo("solid conductor, 8 AWG and smaller").optional(),
    coated: field.yesNo("coated copper").optional(),
    edition: field.edition,
  },
  example: { size: "6", material: "copper", celsius: 75, feet: 120, edition: "2023" },
  none: "Table 8 as entered has no such conductor.",
  run: (given) => dcResistance({ ...given, label: "Resistance of the run, one way" }),
});
