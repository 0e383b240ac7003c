import * as z from "zod";
import { pullingTension } from "../sizing/pulling-tension.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const pullingTensionCalculation = calculation({
  name: "pulling-tension",
  title: "Pulling tension and sidewall pressure",
  about: "Tension along a pull, part by part, and the pressure in each bend, from the feeding end to the pulling end.",
  fields: {
    parts: field.list(
      z.discriminatedUnion("kind", [
        z.strictObject({
          kind: z.literal("straight"),
          feet: field.feet("length"),
          riseFt: z.number().min(-10_000).max(10_000).optional().describe("climb in the direction of the pull, less than 0 going down, ft"),
        }),
        z.strictObject({
          kind: z.literal("bend"),
          degrees: z.number().positive().max(180).describe("turn, degrees"),
          radiusIn: field.inches("radius to the centre line"),
        }),
      ]),
      "parts in order of the pull, straight or bend",
    ),
    weight: field.factor("all conductors together, lb/ft", 1000),
    friction: field.factor("coefficient of friction, 0.5 usual when dry", 2),
    pressing: field.factor("weight correction, 1 when left out", 10).optional(),
    startLbf: field.pounds("held back at the reel", "or-zero").optional(),
  },
  example: {
    parts: [
      { kind: "straight", feet: 40 },
      { kind: "bend", degrees: 90, radiusIn: 18 },
      { kind: "straight", feet: 60, riseFt: 8 },
    ],
    weight: 1.6,
    friction: 0.5,
  },
  run: pullingTension,
});
