import { nextBetterRaceway } from "../sizing/next-better.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";
import { statedValue } from "./stated-value.js";

export const nextBetterRacewayCalculation = calculation({
  name: "next-better-raceway",
  title: "Next better raceway",
  about: "The least raceway whose limit holds a quarter more than the conductors take up. Common practice, not a rule.",
  fields: {
    raceway: field.raceway,
    areaIn2: field.squareInches("conductors together"),
    count: field.count("conductors"),
    nipple: field.yesNo("24 in long or less between boxes").optional(),
    edition: field.edition,
  },
  example: { raceway: "EMT", areaIn2: 0.2, count: 4, edition: "2023" },
  run: ({ areaIn2, ...given }) => nextBetterRaceway({ ...given, area: statedValue(`${given.id}.area`, "Area of the conductors", areaIn2, "in2") }),
});
