import * as z from "zod";
import { buildingGrounding } from "../sizing/electrodes.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const buildingGroundingCalculation = calculation({
  name: "building-grounding",
  title: "Grounding at a second building",
  about: "Whether a separate building needs electrodes, a grounding conductor with its supply, and its neutral kept apart. 250.32.",
  fields: { supply: z.enum(["feeder", "one-branch-circuit", "several-branch-circuits"]).describe("what supplies the building"), edition: field.edition },
  example: { supply: "feeder", edition: "2023" },
  run: ({ id, ...given }) => ({ id, ...buildingGrounding(given) }),
});
