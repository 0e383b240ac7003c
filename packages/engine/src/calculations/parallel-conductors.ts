import * as z from "zod";
import { parallelFaults } from "../sizing/parallel.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const parallelConductorsCalculation = calculation({
  name: "parallel-conductors",
  title: "Whether conductors may be parallel",
  about: "What differs between conductors of one phase that share a current, or is too small. An empty list means that they may. 310.10(G).",
  fields: {
    conductors: field.list(
      z.strictObject({
        feet: field.feet("length"),
        material: field.material,
        size: field.size,
        insulation: field.text("insulation"),
        termination: field.text("how it is terminated"),
      }),
      "conductors of one phase or of the neutral",
    ),
  },
  example: {
    conductors: [
      { feet: 40, material: "copper", size: "3/0", insulation: "THWN-2", termination: "lug" },
      { feet: 44, material: "copper", size: "3/0", insulation: "THWN-2", termination: "lug" },
    ],
  },
  run: ({ id, conductors }) => ({ id, faults: parallelFaults(conductors) }),
});
