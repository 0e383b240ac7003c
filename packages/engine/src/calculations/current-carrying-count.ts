import * as z from "zod";
import { currentCarryingCount } from "../sizing/neutral.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const currentCarryingCountCalculation = calculation({
  name: "current-carrying-count",
  title: "Current-carrying conductors",
  about: "Current-carrying conductors of all circuits in one raceway or cable: the count that adjusts ampacity. 310.15(E).",
  fields: {
    circuits: field.list(
      z.strictObject({
        hots: z.literal([1, 2, 3]).describe("hot conductors"),
        neutral: field.yesNo("whether there is a neutral"),
        system: z.enum(["split", "wye"]).describe("120/240 V single phase, or any legs of a four-wire wye"),
        nonlinear: field.yesNo("whether most of the load is nonlinear"),
      }),
      "circuits in the raceway or cable",
    ),
    edition: field.edition,
  },
  example: { circuits: [{ hots: 2, neutral: true, system: "split", nonlinear: false }], edition: "2023" },
  run: currentCarryingCount,
});
