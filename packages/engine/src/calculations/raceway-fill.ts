import * as z from "zod";
import { conductorArea, fillLimit, fillPercent } from "../sizing/raceway-fill.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const racewayFillCalculation = calculation({
  name: "raceway-fill",
  title: "Fill of a raceway",
  about: "Area of the conductors, the area the raceway may be filled to, and the per cent it is filled. Chapter 9 Tables 1, 4 and 5.",
  fields: {
    conductors: field.list(z.strictObject({ size: field.size, insulation: field.insulation, count: field.count("how many of them") }), "conductors"),
    raceway: field.raceway,
    tradeSize: field.tradeSize,
    nipple: field.yesNo("24 in long or less between boxes").optional(),
    edition: field.edition,
  },
  example: {
    conductors: [
      { size: "6", insulation: "THWN-2", count: 3 },
      { size: "10", insulation: "THWN-2", count: 1 },
    ],
    raceway: "PVC-40",
    tradeSize: "1",
    edition: "2023",
  },
  none: "The tables as entered lack a conductor, or the raceway in that trade size.",
  run: ({ id, conductors, ...given }) => {
    const count = conductors.reduce((sum, conductor) => sum + conductor.count, 0);
    const area = conductorArea({ id: `${id}.area`, conductors, othersIn2: 0, edition: given.edition });
    const limit = fillLimit({ ...given, id: `${id}.limit`, count });
    const percent = area && fillPercent({ ...given, id, area });
    return area && limit && percent && { area, limit, percent, within: Number(area.value) <= Number(limit.value) };
  },
});
