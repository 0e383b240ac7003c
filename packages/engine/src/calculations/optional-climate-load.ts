import * as z from "zod";
import { optionalClimateLoad } from "../service/optional-climate.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const optionalClimateLoadCalculation = calculation({
  name: "optional-climate-load",
  title: "Heating and cooling by the optional method",
  about: "The largest of the heating and cooling selections. 220.82(C).",
  fields: {
    loads: field.list(
      z.discriminatedUnion("kind", [
        z.strictObject({ kind: z.literal("cooling"), va: field.voltAmperes("nameplate") }),
        z.strictObject({
          kind: z.literal("heat-pump"),
          va: field.voltAmperes("nameplate"),
          supplementVA: field.voltAmperes("supplemental electric heat", "or-zero"),
          interlocked: field.yesNo("whether the two cannot run together"),
        }),
        z.strictObject({
          kind: z.literal("space-heating"),
          va: field.voltAmperes("nameplate"),
          separatelyControlled: field.count("separately controlled units"),
        }),
        z.strictObject({ kind: z.literal("thermal-storage"), va: field.voltAmperes("nameplate") }),
      ]),
      "heating and cooling: cooling, heat-pump, space-heating or thermal-storage",
      0,
    ),
    edition: field.edition,
  },
  example: {
    loads: [
      { kind: "cooling", va: 4800 },
      { kind: "space-heating", va: 9600, separatelyControlled: 5 },
    ],
    edition: "2023",
  },
  run: optionalClimateLoad,
});
