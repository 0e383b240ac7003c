import * as z from "zod";
import { airConditionerCircuit } from "../equipment/air-conditioner.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const airConditionerCircuitCalculation = calculation({
  name: "air-conditioner-circuit",
  title: "Circuit of an air conditioner or heat pump",
  about: "As marked, or from the rated currents: conductors at 125 % of the compressor, device at 175 % (225 % at most). 440.22, 440.33.",
  fields: {
    rating: z
      .union([
        z.strictObject({ minimumCircuit: field.amperes("minimum circuit ampacity"), largestDevice: field.amperes("largest device") }),
        z.strictObject({ compressor: field.amperes("rated-load current of the compressor"), others: field.amperes("other motors", "or-zero") }),
      ])
      .describe("nameplate: minimum circuit ampacity and largest device, or the currents to reckon them from"),
    edition: field.edition,
  },
  example: { rating: { minimumCircuit: 22.4, largestDevice: 35 }, edition: "2023" },
  run: airConditionerCircuit,
});
