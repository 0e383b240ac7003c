import * as z from "zod";
import { anglePull } from "../sizing/pull-box.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const anglePullCalculation = calculation({
  name: "angle-pull",
  title: "Box for angle pulls and splices",
  about: "From a row of entries to the opposite wall: six times the largest and the rest of the row. 314.28(A)(2).",
  fields: { row: z.tuple([field.anyTradeSize], field.anyTradeSize).describe("raceways of one row of one wall"), edition: field.edition },
  example: { row: ["2", "1-1/2"], edition: "2023" },
  run: anglePull,
});
