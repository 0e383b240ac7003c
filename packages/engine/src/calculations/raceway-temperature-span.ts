import { yearlySpan } from "../sizing/expansion-fitting.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const racewayTemperatureSpanCalculation = calculation({
  name: "raceway-temperature-span",
  title: "Yearly temperature span of a raceway",
  about: "Yearly span of a raceway temperature, with 30 °F for direct sun as conduit makers add it.",
  fields: {
    lowF: field.fahrenheit("coldest air of the year"),
    highF: field.fahrenheit("hottest air of the year"),
    inSun: field.yesNo("whether the raceway lies in direct sun"),
  },
  example: { lowF: -5, highF: 100, inSun: true },
  run: yearlySpan,
});
