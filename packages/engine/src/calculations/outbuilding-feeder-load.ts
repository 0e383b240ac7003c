import * as z from "zod";
import { outbuildingFeederLoad } from "../service/feeder-load.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const outbuildingFeederLoadCalculation = calculation({
  name: "outbuilding-feeder-load",
  title: "Feeder load of an outbuilding",
  about: "Load of a garage or shed panel, and the amperes to size its feeder by, continuous loads at 125 %. 215.2(A), 215.3, 430.24.",
  fields: {
    loads: field.list(
      z.strictObject({
        name: field.text("what it is"),
        va: field.voltAmperes("load"),
        duty: z.enum(["continuous", "noncontinuous", "motor"]).describe("how it runs"),
      }),
      "loads behind the feeder",
    ),
    volts: field.volts("line to line"),
    edition: field.edition,
  },
  example: {
    loads: [
      { name: "lighting", va: 600, duty: "continuous" },
      { name: "receptacles", va: 3000, duty: "noncontinuous" },
      { name: "compressor", va: 2880, duty: "motor" },
    ],
    volts: 240,
    edition: "2023",
  },
  run: outbuildingFeederLoad,
});
