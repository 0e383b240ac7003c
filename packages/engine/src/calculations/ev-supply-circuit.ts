import { evSupplyCircuit } from "../equipment/ev-supply.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const evSupplyCircuitCalculation = calculation({
  name: "ev-supply-circuit",
  title: "Circuit of EV supply equipment",
  about: "125 % of its rating, or of the setting it is locked to. 625.40 to 625.54.",
  fields: {
    amperes: field.amperes("rating, or the setting it is locked to"),
    receptacle: field.amperes("rating of the receptacle when it plugs in").optional(),
    marked: field.amperes("device that the nameplate or instructions name").optional(),
    place: field.place,
    edition: field.edition,
  },
  example: { amperes: 48, place: "garage", edition: "2023" },
  run: evSupplyCircuit,
});
