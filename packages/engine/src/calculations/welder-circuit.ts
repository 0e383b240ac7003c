import * as z from "zod";
import { welderCircuit } from "../equipment/welder.js";
import { WELDER_DUTY } from "../tables/welder-duty.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const welderCircuitCalculation = calculation({
  name: "welder-circuit",
  title: "Circuit of an arc welder",
  about: "Rated primary current by the multiplier of its duty cycle, or the marked effective current; device at most 200 %. 630.11, 630.12.",
  fields: {
    primary: field.amperes("rated primary current"),
    dutyPercent: field.percent("duty cycle").max(100),
    kind: z.enum(WELDER_DUTY.columns).describe("nonmotor, or motor-generator"),
    markedEffective: field.amperes("effective current as marked").optional(),
    markedMaximum: field.amperes("maximum supply current as marked").optional(),
    conductorAmpacity: field.amperes("ampacity of the conductors in use").optional(),
    receptacle: field.amperes("rating of the receptacle when it plugs in").optional(),
    place: field.place.optional(),
    edition: field.edition,
  },
  example: { primary: 47, dutyPercent: 30, kind: "nonmotor", receptacle: 50, edition: "2023" },
  run: welderCircuit,
});
