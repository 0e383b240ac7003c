import { faultLoop } from "../service/fault-loop.js";
import { calculation } from "./calculation.js";
import { EXAMPLE, segments, source } from "./fault-fields.js";
import * as field from "./fields.js";

export const faultLoopCalculation = calculation({
  name: "fault-loop",
  title: "Ground-fault loop at an outlet",
  about: "Current of a ground fault and how it stands to the breaker, which has to see it. Trip multiples of 5 and 10 are common practice. 250.4(A)(5).",
  fields: {
    source,
    volts: field.volts("line to line"),
    segments,
    breaker: field.amperes("rating of the breaker"),
    tripMultiples: field.list(field.factor("multiple of the rating", 100), "from the maker's curve").optional(),
    edition: field.edition,
  },
  example: {
    ...EXAMPLE,
    breaker: 50,
    edition: "2023",
  },
  none: "Table 9 as entered lacks a conductor, or a stretch has no return for a ground fault.",
  run: (given) => {
    const found = faultLoop(given);
    return found && { amperes: found.loop.amperes, steps: found.loop.steps, multiple: found.multiple, trips: found.trips, result: found.result };
  },
});
