import * as z from "zod";
import { tensionLimit } from "../sizing/pulling-limit.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const pullingTensionLimitCalculation = calculation({
  name: "pulling-tension-limit",
  title: "Greatest pulling tension",
  about: "By the metal of the conductors, and no more than the grip holds.",
  fields: {
    cmil: field.factor("circular mils of one conductor, cmil", 2_000_000),
    count: field.count("like conductors"),
    material: field.material,
    grip: z.enum(["eye", "basket"]).describe("pulling eye or basket grip"),
  },
  example: { cmil: 133100, count: 3, material: "copper", grip: "basket" },
  run: tensionLimit,
});
