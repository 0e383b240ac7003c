import { heatCircuit } from "../equipment/heat.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const heatCircuitCalculation = calculation({
  name: "heat-circuit",
  title: "Circuit of electric space heating",
  about: "Heaters and their motor at 125 %, the device the next standard rating. 424.4(B).",
  fields: {
    watts: field.watts("heaters"),
    motorAmperes: field.amperes("blower motor", "or-zero").optional(),
    volts: field.outletVolts,
    place: field.place.optional(),
    edition: field.edition,
  },
  example: { watts: 9600, motorAmperes: 2.5, volts: 240, edition: "2023" },
  run: heatCircuit,
});
