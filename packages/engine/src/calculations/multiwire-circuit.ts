import * as z from "zod";
import { multiwireCircuit } from "../equipment/multiwire.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const multiwireCircuitCalculation = calculation({
  name: "multiwire-circuit",
  title: "Multiwire branch circuit",
  about: "Two hots with one neutral: the current in the neutral, what is wrong and what to mind. 210.4, 240.15(B).",
  fields: {
    legA: field.amperes("one leg", "or-zero"),
    legB: field.amperes("the other leg", "or-zero"),
    oppositeLegs: field.yesNo("whether the hots are on opposite legs"),
    breaker: z.enum(["common-trip", "identified-handle-tie", "separate"]).describe("how the poles open"),
    lineToLineLoads: field.yesNo("whether it serves 240 V loads too"),
    onlyOneEquipment: field.yesNo("whether it serves only one piece of equipment"),
    groupedOrOwnCable: field.yesNo("whether its conductors are grouped or in a cable of their own"),
    neutralSplicedThrough: field.yesNo("whether the neutral does not depend on a device"),
    edition: field.edition,
  },
  example: {
    legA: 14,
    legB: 9,
    oppositeLegs: true,
    breaker: "common-trip",
    lineToLineLoads: false,
    onlyOneEquipment: false,
    groupedOrOwnCable: true,
    neutralSplicedThrough: true,
    edition: "2023",
  },
  run: multiwireCircuit,
});
