import * as z from "zod";
import { racewayBendRadius } from "../sizing/bend-radius.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const racewayBendRadiusCalculation = calculation({
  name: "raceway-bend-radius",
  title: "Least radius of a raceway bend",
  about: "Least radius of a field bend to its centre line. Chapter 9 Table 2.",
  fields: {
    tradeSize: field.anyTradeSize,
    bender: z.enum(["oneShot", "other"]).describe("one-shot or full-shoe bender, or another way"),
    edition: field.edition,
  },
  example: { tradeSize: "1", bender: "oneShot", edition: "2023" },
  none: "Chapter 9 Table 2 does not list the trade size.",
  run: racewayBendRadius,
});
