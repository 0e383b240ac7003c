import * as z from "zod";
import { loopImpedance } from "../sizing/impedance.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const loopImpedanceCalculation = calculation({
  name: "loop-impedance",
  title: "Impedance of conductors in series",
  about: "Resistance and reactance of conductors in series by Chapter 9 Table 9.",
  fields: {
    runs: field.list(
      z.strictObject({
        size: field.size,
        material: field.material,
        conduit: field.conduit,
        feet: field.feet("one way"),
        celsius: field.celsius("conductor temperature, 75 when left out").optional(),
        parallel: field.count("conductors in parallel, 1 when left out").optional(),
      }),
      "conductors one after another",
    ),
    edition: field.edition,
  },
  example: {
    runs: [
      { size: "6", material: "copper", conduit: "PVC", feet: 80 },
      { size: "10", material: "copper", conduit: "PVC", feet: 80 },
    ],
    edition: "2023",
  },
  none: "Table 9 as entered lacks a conductor.",
  run: (given) => {
    const loop = loopImpedance({ ...given, label: "Loop" });
    return loop && { resistance: loop.resistance, reactance: loop.reactance };
  },
});
