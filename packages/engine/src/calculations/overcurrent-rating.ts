import { overcurrentRating } from "../sizing/overcurrent.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const overcurrentRatingCalculation = calculation({
  name: "overcurrent-rating",
  title: "Least overcurrent rating",
  about: "Noncontinuous load and 125 % of the continuous one, then the next standard rating, to 600 A. 210.20(A), 240.6(A).",
  fields: { continuous: field.amperes("continuous load", "or-zero"), noncontinuous: field.amperes("the rest of the load", "or-zero"), edition: field.edition },
  example: { continuous: 32, noncontinuous: 6, edition: "2023" },
  run: overcurrentRating,
});
