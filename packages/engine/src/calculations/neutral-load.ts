import * as z from "zod";
import { neutralLoad } from "../service/neutral-load.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const neutralLoadCalculation = calculation({
  name: "neutral-load",
  title: "Load of a neutral",
  about: "Line-to-neutral load whole, cooking and dryers at 70 %, then 70 % of what is over 200 A. Not for two legs of a 208Y/120 V supply. 220.61.",
  fields: {
    load: z
      .strictObject({
        lineToNeutralVA: field.voltAmperes("between a hot and the neutral, after demand factors", "or-zero"),
        cookingVA: field.voltAmperes("demand of cooking appliances", "or-zero"),
        dryersVA: field.voltAmperes("demand of dryers", "or-zero"),
        volts: field.volts("line to line"),
      })
      .describe("what the neutral carries"),
    edition: field.edition,
  },
  example: { load: { lineToNeutralVA: 9000, cookingVA: 8000, dryersVA: 5600, volts: 240 }, edition: "2023" },
  run: neutralLoad,
});
