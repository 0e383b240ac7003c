import * as z from "zod";
import { conductorArea, fillLimit, leastRaceway } from "../sizing/raceway-fill.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const racewaySizeCalculation = calculation({
  name: "raceway-size",
  title: "Least raceway for conductors",
  about: "The smallest trade size whose limit holds the conductors. Chapter 9 Tables 1, 4 and 5.",
  fields: {
    conductors: field.list(z.strictObject({ size: field.size, insulation: field.insulation, count: field.count("how many of them") }), "conductors"),
    raceway: field.raceway,
    nipple: field.yesNo("24 in long or less between boxes").optional(),
    edition: field.edition,
  },
  example: {
    conductors: [
      { size: "6", insulation: "THWN-2", count: 3 },
      { size: "10", insulation: "THWN-2", count: 1 },
    ],
    raceway: "PVC-40",
    edition: "2023",
  },
  none: "Table 5 as entered lacks a conductor, or no trade size listed holds them.",
  run: ({ id, conductors, ...given }) => {
    const count = conductors.reduce((sum, conductor) => sum + conductor.count, 0);
    const area = conductorArea({ id: `${id}.area`, conductors, othersIn2: 0, edition: given.edition });
    const tradeSize = area && leastRaceway({ ...given, areaIn2: area.value, count });
    return area && tradeSize && { tradeSize, area, limit: fillLimit({ ...given, id, tradeSize, count }) };
  },
});
