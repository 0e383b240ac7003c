import * as z from "zod";
import { entryDistance } from "../sizing/pull-box.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const entryDistanceCalculation = calculation({
  name: "entry-distance",
  title: "Distance between two entries",
  about: "Between two entries with the same conductors, edge to edge: six times the larger. 314.28(A)(2).",
  fields: { pair: z.tuple([field.anyTradeSize, field.anyTradeSize]).describe("the two raceways"), edition: field.edition },
  example: { pair: ["2", "1-1/2"], edition: "2023" },
  run: entryDistance,
});
