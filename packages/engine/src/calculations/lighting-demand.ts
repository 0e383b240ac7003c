import { lightingDemand } from "../service/lighting-demand.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const lightingDemandCalculation = calculation({
  name: "lighting-demand",
  title: "Demand of general lighting",
  about: "First 3,000 VA whole, to 120,000 at 35 %, the rest at 25 %. Table 220.45.",
  fields: { connectedVA: field.voltAmperes("general lighting with small-appliance and laundry circuits", "or-zero"), edition: field.edition },
  example: { connectedVA: 10500, edition: "2023" },
  run: ({ connectedVA, ...given }) => lightingDemand({ ...given, connectedVA: String(connectedVA) }),
});
