import * as z from "zod";
import { electrodeConductor } from "../sizing/electrode-conductor.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const groundingElectrodeConductorCalculation = calculation({
  name: "grounding-electrode-conductor",
  title: "Grounding electrode conductor",
  about: "By the circular mils of the supply and what it goes on to, never larger than the table. 250.66.",
  fields: {
    supply: field.supply,
    material: field.material,
    electrodes: field.list(
      z.enum(["rod", "pipe", "plate", "concrete-encased", "ring", "water-pipe", "structural-metal"]),
      "all electrodes that this portion reaches",
    ),
    ring: field.size.optional().describe("size of the ground ring's conductor"),
    edition: field.edition,
  },
  example: { supply: { size: "4/0", material: "aluminum", sets: 1 }, material: "copper", electrodes: ["water-pipe"], edition: "2023" },
  run: electrodeConductor,
});
