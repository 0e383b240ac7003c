import * as z from "zod";
import { subpanelFeeder } from "../equipment/subpanel.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const subpanelFeederCalculation = calculation({
  name: "subpanel-feeder",
  title: "Feeder of a subpanel",
  about:
    "125 % of the continuous load and the rest, the device not over the bus, the disconnect of a separate building not under its least rating. 215.2, 215.3, 225.39, 408.36.",
  fields: {
    continuous: field.amperes("continuous load", "or-zero"),
    noncontinuous: field.amperes("the rest of the load", "or-zero"),
    bus: field.amperes("bus rating of the panel"),
    building: z.enum(["same", "pedestal", "one-circuit", "two-circuits", "dwelling", "other"]).describe("what it feeds"),
    edition: field.edition,
  },
  example: { continuous: 20, noncontinuous: 30, bus: 100, building: "other", edition: "2023" },
  run: subpanelFeeder,
});
