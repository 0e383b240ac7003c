import { groundingConductor } from "../sizing/grounding.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const equipmentGroundingConductorCalculation = calculation({
  name: "equipment-grounding-conductor",
  title: "Equipment grounding conductor",
  about: "By the overcurrent device, raised in proportion when the ungrounded conductors are larger than they need be. Table 250.122, 250.122(B).",
  fields: {
    overcurrent: field.amperes("rating of the overcurrent device").max(1200),
    material: field.material,
    leastSize: field.size.describe("least ungrounded conductor that serves"),
    usedSize: field.size.describe("ungrounded conductor in use"),
    edition: field.edition,
  },
  example: { overcurrent: 50, material: "copper", leastSize: "8", usedSize: "4", edition: "2023" },
  run: groundingConductor,
});
