import * as z from "zod";
import { neutralSwitching } from "../equipment/neutral-switching.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const neutralSwitchingCalculation = calculation({
  name: "neutral-switching",
  title: "Whether the neutral is switched",
  about: "A generator whose neutral is bonded to its frame is a separately derived source: its neutral is switched; a floating one keeps it solid. 250.30.",
  fields: {
    neutralBonded: field.yesNo("whether the neutral of the generator is bonded to its frame"),
    transfer: z.enum(["interlock", "manual-switch", "manual-switch-with-neutral", "automatic", "automatic-with-neutral"]).describe("transfer means"),
    edition: field.edition,
  },
  example: { neutralBonded: true, transfer: "interlock", edition: "2023" },
  run: ({ id, ...given }) => ({ id, ...neutralSwitching(given) }),
});
