import * as z from "zod";
import { RECEPTACLES, type Receptacle } from "../equipment/equipment.js";
import { receptacleCircuit } from "../equipment/receptacle.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const receptacleCircuitCalculation = calculation({
  name: "receptacle-circuit",
  title: "Circuit of a receptacle",
  about: "A receptacle worked at its own rating, alone or one of several alike. 210.21(B).",
  fields: {
    receptacle: z.enum(Object.keys(RECEPTACLES) as [Receptacle, ...Receptacle[]]).describe("configuration"),
    several: field.yesNo("whether several are on the circuit"),
    place: field.place,
    edition: field.edition,
  },
  example: { receptacle: "14-50R", several: false, place: "outdoors", edition: "2023" },
  run: receptacleCircuit,
});
