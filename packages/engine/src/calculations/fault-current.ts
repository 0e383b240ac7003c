import * as z from "zod";
import { FAULT_PATHS, faultCurrents } from "../service/fault-current.js";
import { calculation } from "./calculation.js";
import { EXAMPLE, segments, source } from "./fault-fields.js";
import * as field from "./fields.js";

export const faultCurrentCalculation = calculation({
  name: "fault-current",
  title: "Fault current along a chain",
  about: "Symmetrical current of a bolted fault at the terminals of the source and the end of each stretch. Table 9; motors add nothing. 110.9, 110.24.",
  fields: {
    source,
    volts: field.volts("line to line"),
    segments,
    path: z.enum(FAULT_PATHS).describe("between what the fault is"),
    edition: field.edition,
  },
  example: {
    ...EXAMPLE,
    path: "line-to-line",
    edition: "2023",
  },
  none: "Table 9 as entered lacks a conductor, or a stretch has no return for the path.",
  run: (given) => {
    const levels = faultCurrents(given);
    return levels && { levels: levels.map(({ at, total, amperes, steps }) => ({ at, total, amperes, steps })) };
  },
});
