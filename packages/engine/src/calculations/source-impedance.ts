import * as z from "zod";
import { sourceImpedance } from "../service/fault-source.js";
import { calculation } from "./calculation.js";
import { source } from "./fault-fields.js";
import * as field from "./fields.js";

export const sourceImpedanceCalculation = calculation({
  name: "source-impedance",
  title: "Impedance of a source",
  about: "Resistance and reactance of a 120/240 V source in the path of a fault.",
  fields: {
    source,
    volts: field.volts("line to line"),
    through: z.enum(["lines", "neutral"]).describe("fault between lines, or through the neutral"),
  },
  example: { source: { kind: "transformer", kVA: 25, percentZ: 1.6 }, volts: 240, through: "lines" },
  run: (given) => ({ steps: sourceImpedance(given).steps }),
});
