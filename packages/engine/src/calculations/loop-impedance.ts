import { loopImpedance } from "../sizing/impedance.js";
import { calculation } from "./calculation.js";
import { conductor } from "./drop-fields.js";
import * as field from "./fields.js";

export const loopImpedanceCalculation = calculation({
  name: "loop-impedance",
  title: "Impedance of conductors in series",
  about: "Resistance and reactance of conductors in series by Chapter 9 Table 9.",
  fields: {
    runs: field.list(conductor, "conductors one after another"),
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
