import * as z from "zod";
import { straightPull } from "../sizing/pull-box.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const straightPullCalculation = calculation({
  name: "straight-pull",
  title: "Length of a box for straight pulls",
  about: "Eight times the largest raceway. 314.28(A)(1).",
  fields: { tradeSizes: z.tuple([field.anyTradeSize], field.anyTradeSize).describe("raceways of the straight pulls"), edition: field.edition },
  example: { tradeSizes: ["2", "1-1/2"], edition: "2023" },
  run: straightPull,
});
