import * as z from "zod";
import { neutralSize } from "../sizing/neutral.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";
import { statedValue } from "./stated-value.js";

export const neutralConductorCalculation = calculation({
  name: "neutral-conductor",
  title: "Least neutral conductor",
  about: "Least neutral for its greatest unbalance, not smaller than the conductor that carries the fault current. 220.61, 215.2, 230.42.",
  fields: {
    unbalance: field.amperes("greatest unbalance, 220.61"),
    material: field.material,
    terminalC: field.terminalC,
    floor: z
      .strictObject({
        kind: z.enum(["feeder", "service"]).describe("feeder: its equipment grounding conductor; service: its grounded conductor of Table 250.102(C)(1)"),
        size: field.size,
      })
      .describe("the size it may not be under"),
    edition: field.edition,
  },
  example: { unbalance: 62, material: "copper", terminalC: 75, floor: { kind: "feeder", size: "8" }, edition: "2023" },
  none: "No size in the table serves.",
  run: ({ unbalance, ...given }) => neutralSize({ ...given, load: statedValue(`${given.id}.unbalance`, "Greatest unbalance of the neutral", unbalance, "A") }),
});
