import * as z from "zod";
import { pullBoxSize } from "../sizing/pull-box-size.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const pullBoxSizeCalculation = calculation({
  name: "pull-box-size",
  title: "Least size of a pull box",
  about: "Inside width, height and depth of a box with conductors of 4 AWG or larger, from its entries and pulls. 314.28(A).",
  fields: {
    entries: field.list(
      z.strictObject({
        id: field.text("name of the entry"),
        wall: z.enum(["left", "right", "top", "bottom", "back"]).describe("wall it is in"),
        row: field.count("row of that wall"),
        tradeSize: field.anyTradeSize,
      }),
      "raceway entries",
    ),
    pulls: field.list(
      z.strictObject({
        from: field.text("an entry"),
        to: field.text("another entry"),
        spliced: field.yesNo("whether the conductors are spliced in the box").optional(),
      }),
      "conductors from one entry to another",
      0,
    ),
    backConductor: field.size.optional().describe("largest conductor through an entry in the back"),
    edition: field.edition,
  },
  example: {
    entries: [
      { id: "in", wall: "left", row: 1, tradeSize: "2" },
      { id: "out", wall: "bottom", row: 1, tradeSize: "2" },
    ],
    pulls: [{ from: "in", to: "out" }],
    edition: "2023",
  },
  run: pullBoxSize,
});
