import * as z from "zod";
import { expansion, fittingsNeeded } from "../sizing/expansion-fitting.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const racewayExpansionCalculation = calculation({
  name: "raceway-expansion",
  title: "Expansion of a raceway",
  about:
    "Change in length of a straight run between fixed points, whether it calls for an expansion fitting, and how many of a given travel. 352.44, 300.7(B).",
  fields: {
    material: z.enum(["PVC", "steel"]).describe("material of the raceway"),
    feet: field.feet("straight run between fixed points"),
    spanF: field.factor("yearly span of temperature, °F", 300),
    travelIn: field.inches("travel of one fitting by its maker").optional(),
    edition: field.edition,
  },
  example: { material: "PVC", feet: 60, spanF: 130, travelIn: 4, edition: "2023" },
  run: ({ travelIn, ...given }) => {
    const found = expansion({ ...given, id: `${given.id}.change` });
    return { ...found, fittings: travelIn === undefined ? null : fittingsNeeded({ id: given.id, expansion: found, travelIn }) };
  },
});
