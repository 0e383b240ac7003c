import { sidewallLimit } from "../sizing/pulling-limit.js";
import { calculation } from "./calculation.js";

export const sidewallPressureLimitCalculation = calculation({
  name: "sidewall-pressure-limit",
  title: "Greatest sidewall pressure",
  about: "Where the maker of the cable prints none.",
  fields: {},
  example: {},
  run: sidewallLimit,
});
