import { wedgingFactor } from "../sizing/pulling-limit.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const wedgingFactorCalculation = calculation({
  name: "wedging-factor",
  title: "Weight correction of a pull",
  about: "How much harder three or more conductors press than their weight.",
  fields: { boreIn: field.inches("inside diameter of the raceway"), conductorIn: field.inches("diameter of one conductor"), count: field.count("conductors") },
  example: { boreIn: 2.067, conductorIn: 0.532, count: 3 },
  run: wedgingFactor,
});
