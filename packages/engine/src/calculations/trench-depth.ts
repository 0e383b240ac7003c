import * as z from "zod";
import { unamended } from "../basis/basis.js";
import { leastCover, trenchDepth } from "../sizing/burial.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const trenchDepthCalculation = calculation({
  name: "trench-depth",
  title: "Depth of a trench",
  about: "Cover, outside diameter and bedding added up. Cover is measured to the top of what is buried. 300.5.",
  fields: {
    method: z.enum(["UF-B", "RMC", "IMC", "PVC-40", "PVC-80"]).describe("what is buried"),
    place: z
      .enum(["general", "under-concrete-2in", "under-building", "under-slab-4in", "under-street", "under-dwelling-driveway"])
      .describe("what it lies under"),
    small120V: field.yesNo("residential branch circuit of 120 V and 20 A or less with GFCI protection").optional(),
    outsideIn: field.inches("outside diameter of what is buried"),
    beddingIn: field.inches("bedding below it", "or-zero"),
    edition: field.edition,
  },
  example: { method: "PVC-40", place: "general", outsideIn: 1.315, beddingIn: 3, edition: "2023" },
  run: ({ id, edition, outsideIn, beddingIn, ...given }) => {
    const cover = leastCover({ ...given, id: `${id}.cover`, basis: unamended(edition) });
    return { cover, depth: trenchDepth({ id, cover, outsideIn, beddingIn }) };
  },
});
