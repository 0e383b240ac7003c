import { leastConductor } from "../sizing/conductor.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const conductorSizeCalculation = calculation({
  name: "conductor-size",
  title: "Least conductor for a load",
  about:
    "The smallest size that meets the terminals, its load after correction and adjustment, its overcurrent device and the small-conductor caps. 110.14(C), 210.19(A), 240.4.",
  fields: {
    material: field.material,
    insulation: field.insulation,
    ambientC: field.celsius("air around the conductor"),
    currentCarrying: field.count("current-carrying conductors together"),
    terminalC: field.terminalC,
    demand: field.demand,
    edition: field.edition,
  },
  example: {
    material: "copper",
    insulation: "THWN-2",
    ambientC: 38,
    currentCarrying: 3,
    terminalC: 75,
    demand: { load: 40, terminalLoad: 50, overcurrent: 50 },
    edition: "2023",
  },
  none: "No size in the tables serves.",
  run: ({ demand, ...given }) => leastConductor(given, demand),
});
