import { largestMotorQuarter } from "../service/largest-motor.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const largestMotorCalculation = calculation({
  name: "largest-motor",
  title: "A quarter of the largest motor",
  about: "Added once to the sum in which every motor stands whole. 220.50, 430.24.",
  fields: { motorsVA: field.list(field.voltAmperes("one motor load"), "motor loads"), edition: field.edition },
  example: { motorsVA: [1800, 2880], edition: "2023" },
  run: largestMotorQuarter,
});
