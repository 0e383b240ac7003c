import * as z from "zod";
import { rangeCircuit } from "../equipment/range.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const rangeCircuitCalculation = calculation({
  name: "range-circuit",
  title: "Circuit of a range",
  about: "One range, oven or cooktop, or a cooktop with one or two ovens on one circuit in one room. Table 220.55 Note 4.",
  fields: {
    appliances: field.list(
      z.strictObject({ is: z.enum(["range", "cooktop", "oven"]).describe("what it is"), kW: field.kilowatts("nameplate at 240 V") }),
      "cooking appliances on the circuit",
    ),
    receptacle: field.amperes("rating of the receptacle when it plugs in").optional(),
    marked: field.amperes("device that the nameplate or instructions name").optional(),
    place: field.place.optional(),
    edition: field.edition,
  },
  example: { appliances: [{ is: "range", kW: 12 }], receptacle: 50, edition: "2023" },
  none: "The set is not one that Note 4 counts on one circuit: each appliance then has its own.",
  run: rangeCircuit,
});
