import * as z from "zod";
import { usedTogether } from "../readings/use-limits.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const appliancesTogetherCalculation = calculation({
  name: "appliances-together",
  title: "Appliances that run together at an outlet",
  about: "Amperes on each leg against the breaker: 125 % of what runs three hours or more, the rest whole.",
  fields: {
    hookup: z.enum(["15", "30", "50", "50-to-30"]).describe("what the vehicle is plugged into"),
    volts: field.volts("at the outlet under load, a leg"),
    appliances: field.list(
      z.strictObject({
        id: field.text("short name"),
        says: field.text("what it is"),
        watts: field.watts("at 120 V"),
        behaves: z.enum(["resistance", "constant-power"]).describe("how it draws at low voltage"),
        continuous: field.yesNo("may run three hours or more"),
        leg: z.literal([1, 2]).describe("leg of a 50 A inlet"),
        always: field.yesNo("on all the time"),
        standing: z.enum(["practice", "memory"]).default("practice").describe("where the watts come from"),
      }),
      "what runs",
      0,
    ),
    edition: field.edition,
  },
  example: {
    hookup: "30",
    volts: 116,
    appliances: [
      { id: "air-conditioner", says: "Air conditioner", watts: 1500, behaves: "constant-power", continuous: true, leg: 1, always: false },
      { id: "microwave", says: "Microwave oven", watts: 1500, behaves: "constant-power", continuous: false, leg: 1, always: false },
    ],
    edition: "2023",
  },
  run: ({ id, ...given }) => ({ id, ...usedTogether(given) }),
});
