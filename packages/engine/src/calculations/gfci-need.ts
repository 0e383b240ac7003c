import { gfciNeed } from "../equipment/gfci-need.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const gfciNeedCalculation = calculation({
  name: "gfci-need",
  title: "Whether an outlet needs GFCI protection",
  about: "By place, rating and volts at a dwelling; an amendment may say otherwise. 210.8.",
  fields: {
    place: field.place,
    receptacle: field.yesNo("a receptacle, or false for hard-wired equipment"),
    rating: field.amperes("branch circuit"),
    volts: field.outletVolts,
    listedAppliance: field.yesNo("an appliance that 210.8(D) names").optional(),
    edition: field.edition,
  },
  example: { place: "outdoors", receptacle: true, rating: 50, volts: 240, edition: "2023" },
  run: ({ id, ...given }) => ({ id, ...gfciNeed(given) }),
});
