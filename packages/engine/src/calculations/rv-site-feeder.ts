import { leastRvFeederAmperes } from "../service/rv-park-demand.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const rvSiteFeederCalculation = calculation({
  name: "rv-site-feeder",
  title: "Least feeder of recreational vehicle sites",
  about: "The load in amperes, and never under 30 A. 551.73(D).",
  fields: { va: field.voltAmperes("load of the feeder"), volts: field.volts("feeder"), edition: field.edition },
  example: { va: 12000, volts: 240, edition: "2023" },
  run: ({ va, ...given }) => leastRvFeederAmperes({ ...given, va: String(va) }),
});
