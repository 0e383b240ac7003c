import { shortfalls } from "../sizing/conductor.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const conductorAdequacyCalculation = calculation({
  name: "conductor-adequacy",
  title: "Test of a conductor against a load",
  about: "Which of the tests one size does not meet: terminals, load after correction, protection, small-conductor caps. An empty list means that it serves.",
  fields: {
    size: field.size,
    material: field.material,
    insulation: field.insulation,
    ambientC: field.celsius("air around the conductor"),
    currentCarrying: field.count("current-carrying conductors together"),
    terminalC: field.terminalC,
    demand: field.demand,
    edition: field.edition,
  },
  example: {
    size: "10",
    material: "copper",
    insulation: "THWN-2",
    ambientC: 38,
    currentCarrying: 3,
    terminalC: 75,
    demand: { load: 40, terminalLoad: 50, overcurrent: 50 },
    edition: "2023",
  },
  run: ({ demand, ...given }) => shortfalls(given, demand),
});
