import * as z from "zod";
import { type RvSite, rvParkDemand } from "../service/rv-park-demand.js";
import { RV_SITE_LOAD } from "../tables/rv-site-demand.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const rvParkDemandCalculation = calculation({
  name: "rv-park-demand",
  title: "Demand of recreational vehicle sites",
  about:
    "Site loads by the largest receptacle of each, times the factor for the number of sites. Parks; at a house only where the authority lets the factor stand. 551.73(A).",
  fields: {
    sites: field.list(
      z.strictObject({
        site: z.enum(Object.keys(RV_SITE_LOAD.rows) as [RvSite, ...RvSite[]]).describe("largest receptacle of the site"),
        count: field.count("sites alike"),
        eachVA: field.voltAmperes("one site, in place of the table").optional(),
      }),
      "sites",
    ),
    otherVA: field.voltAmperes("other loads of the park", "or-zero"),
    edition: field.edition,
  },
  example: { sites: [{ site: "50", count: 4 }], otherVA: 0, edition: "2023" },
  run: rvParkDemand,
});
