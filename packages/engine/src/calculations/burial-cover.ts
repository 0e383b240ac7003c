import * as z from "zod";
import { unamended } from "../basis/basis.js";
import { leastCover } from "../sizing/burial.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const burialCoverCalculation = calculation({
  name: "burial-cover",
  title: "Least cover of a buried run",
  about: "Least cover from the top of a cable or raceway to grade by the unamended code. Table 300.5; the jurisdiction may ask more.",
  fields: {
    method: z.enum(["UF-B", "RMC", "IMC", "PVC-40", "PVC-80"]).describe("what is buried"),
    place: z
      .enum(["general", "under-concrete-2in", "under-building", "under-slab-4in", "under-street", "under-dwelling-driveway"])
      .describe("what it lies under"),
    small120V: field.yesNo("residential branch circuit of 120 V and 20 A or less with GFCI protection").optional(),
    edition: field.edition,
  },
  example: { method: "PVC-40", place: "general", edition: "2023" },
  run: ({ edition, ...given }) => leastCover({ ...given, basis: unamended(edition) }),
});
