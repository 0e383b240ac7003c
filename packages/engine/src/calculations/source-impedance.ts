import * as z from "zod";
import { sourceImpedance } from "../service/fault-source.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const sourceImpedanceCalculation = calculation({
  name: "source-impedance",
  title: "Impedance of a source",
  about: "Resistance and reactance of a 120/240 V source in the path of a fault.",
  fields: {
    source: z
      .discriminatedUnion("kind", [
        z.strictObject({
          kind: z.literal("transformer"),
          kVA: field.factor("rating, kVA", 10_000),
          percentZ: field.percent("nameplate impedance").max(50),
          xOverR: field.factor("X/R ratio", 100).optional(),
          tolerancePercent: field.percent("making tolerance taken off the impedance", "or-zero").max(50).optional(),
          primary: z
            .strictObject({
              amperes: field.amperes("fault current on the high side"),
              volts: field.volts("high side"),
              xOverR: field.factor("X/R ratio", 100).optional(),
            })
            .optional()
            .describe("primary behind the transformer, infinite when left out"),
        }),
        z.strictObject({
          kind: z.literal("utility"),
          amperes: field.amperes("fault current stated by the utility"),
          lineToNeutralAmperes: field.amperes("the same line to neutral").optional(),
          xOverR: field.factor("X/R ratio", 100).optional(),
        }),
      ])
      .describe("a transformer by its nameplate, or the fault current that the utility states"),
    volts: field.volts("line to line"),
    through: z.enum(["lines", "neutral"]).describe("fault between lines, or through the neutral"),
  },
  example: { source: { kind: "transformer", kVA: 25, percentZ: 1.6 }, volts: 240, through: "lines" },
  run: (given) => ({ steps: sourceImpedance(given).steps }),
});
