import { dryerCircuit } from "../equipment/dryer.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const dryerCircuitCalculation = calculation({
  name: "dryer-circuit",
  title: "Circuit of a clothes dryer",
  about: "5,000 VA or the nameplate, whichever is larger, on a 30 A 125/250 V receptacle. 220.54.",
  fields: { nameplate: field.voltAmperes("nameplate"), place: field.place.optional(), edition: field.edition },
  example: { nameplate: 5600, edition: "2023" },
  run: dryerCircuit,
});
