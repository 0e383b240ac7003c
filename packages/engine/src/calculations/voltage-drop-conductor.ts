import { sizeForDrop } from "../sizing/voltage-drop.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const voltageDropConductorCalculation = calculation({
  name: "voltage-drop-conductor",
  title: "Conductor for a voltage drop",
  about: "The smallest size whose circular mils reach 2·K·I·L over the volts that may be lost.",
  fields: {
    current: field.amperes("load current"),
    feet: field.feet("one way"),
    allowedVolts: field.volts("that may be lost"),
    material: field.material,
    edition: field.edition,
  },
  example: { current: 40, feet: 150, allowedVolts: 7.2, material: "copper", edition: "2023" },
  run: sizeForDrop,
});
