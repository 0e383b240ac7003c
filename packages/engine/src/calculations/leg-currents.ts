import * as z from "zod";
import { legCurrents } from "../service/leg-currents.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const legCurrentsCalculation = calculation({
  name: "leg-currents",
  title: "Currents of legs and neutral",
  about: "Amperes on each wire of a single-phase 3-wire supply: what is there, each row, and a quarter of the largest motor on the wire. 220.61(A), 430.24.",
  fields: {
    base: z
      .strictObject({ L1: field.amperes("on leg 1", "or-zero"), neutral: field.amperes("on the neutral", "or-zero"), L2: field.amperes("on leg 2", "or-zero") })
      .describe("what is there already, A"),
    rows: field.list(
      z.strictObject({
        name: field.text("what it is"),
        amperes: z
          .strictObject({
            L1: field.amperes("on leg 1", "or-zero"),
            neutral: field.amperes("on the neutral", "or-zero"),
            L2: field.amperes("on leg 2", "or-zero"),
          })
          .describe("on each wire, A"),
        motorOn: field.list(z.enum(["L1", "neutral", "L2"]), "wires on which the current is a motor's", 0),
      }),
      "loads",
      0,
    ),
    edition: field.edition,
  },
  example: { base: { L1: 20, neutral: 8, L2: 16 }, rows: [{ name: "pump", amperes: { L1: 12, neutral: 0, L2: 12 }, motorOn: ["L1", "L2"] }], edition: "2023" },
  run: legCurrents,
});
