import * as z from "zod";
import { managedLoad } from "../service/managed-load.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const managedLoadCalculation = calculation({
  name: "managed-load",
  title: "Load under energy management",
  about: "Load of equipment held under a setpoint, or its own sum where less; the setpoint guarded against change. 220.70 with 750.30; for EV supply 625.42.",
  fields: {
    setpointAmperes: field.amperes("setpoint"),
    volts: field.volts("line to line"),
    managedVA: field.list(field.voltAmperes("one load"), "loads under management"),
    manages: z.enum(["any", "ev-only"]).describe("what the system manages"),
    edition: field.edition,
  },
  example: { setpointAmperes: 32, volts: 240, managedVA: [9600, 4800], manages: "ev-only", edition: "2023" },
  none: "The edition gives no such count: the loads then count by their own rules.",
  run: managedLoad,
});
