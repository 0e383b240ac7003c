import * as z from "zod";
import { motorCircuit } from "../equipment/motor.js";
import { type Horsepower, MOTOR_CURRENT } from "../tables/motor-current.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const motorCircuitCalculation = calculation({
  name: "motor-circuit",
  title: "Circuit of a motor",
  about:
    "One continuous-duty single-phase motor with an inverse-time breaker: table current for the circuit, nameplate current for the overload. 430.22, 430.32, 430.52.",
  fields: {
    horsepower: z.enum(Object.keys(MOTOR_CURRENT.rows) as [Horsepower, ...Horsepower[]]).describe("rating, hp"),
    motorVolts: z.enum(MOTOR_CURRENT.columns).describe("rated volts, V"),
    nameplate: field.amperes("nameplate current"),
    serviceFactor: field.factor("service factor", 2).optional(),
    riseC: field.celsius("marked temperature rise").optional(),
    place: field.place.optional(),
    edition: field.edition,
  },
  example: { horsepower: "2", motorVolts: "230", nameplate: 11.2, serviceFactor: 1.15, edition: "2023" },
  run: motorCircuit,
});
