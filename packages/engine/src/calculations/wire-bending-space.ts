import * as z from "zod";
import { bendingSpace } from "../sizing/bending-space.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const wireBendingSpaceCalculation = calculation({
  name: "wire-bending-space",
  title: "Wire-bending space at a terminal",
  about: "Least room from a terminal to the wall its conductor faces. 312.6(B).",
  fields: {
    size: field.size,
    wiresPerTerminal: z.literal([1, 2]).describe("wires at each terminal"),
    opposite: field.yesNo("whether the conductor leaves through the wall it faces"),
    edition: field.edition,
  },
  example: { size: "2/0", wiresPerTerminal: 1, opposite: true, edition: "2023" },
  none: "The code names no figure for 14 to 10 AWG, or the tables as entered lack the size or number of wires.",
  run: bendingSpace,
});
