import { waterHeaterCircuit } from "../equipment/water-heater.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const waterHeaterCircuitCalculation = calculation({
  name: "water-heater-circuit",
  title: "Circuit of a water heater",
  about: "A storage tank of 120 gal or less is a continuous load; the device at most 150 % of the rated current unless marked. 422.11(E), 422.13.",
  fields: {
    watts: field.watts("rating"),
    volts: field.outletVolts,
    gallons: field.factor("tank, gal", 10_000),
    marked: field.amperes("device that the nameplate or instructions name").optional(),
    place: field.place.optional(),
    edition: field.edition,
  },
  example: { watts: 4500, volts: 240, gallons: 50, edition: "2023" },
  run: waterHeaterCircuit,
});
