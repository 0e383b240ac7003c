import { evLoad } from "../service/ev-load.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const evLoadCalculation = calculation({
  name: "ev-load",
  title: "Load of EV supply equipment",
  about: "On a feeder or service: the nameplate, not under 7,200 VA in 2023. The 125 % of a continuous load is not in it. 220.57.",
  fields: { nameplateVA: field.voltAmperes("nameplate, null where not known").nullable(), edition: field.edition },
  example: { nameplateVA: 9600, edition: "2023" },
  run: evLoad,
});
