import { parallelGrounding } from "../sizing/parallel.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const parallelGroundingConductorsCalculation = calculation({
  name: "parallel-grounding-conductors",
  title: "Equipment grounding conductors of parallel sets",
  about: "The whole size in each raceway, never a share of it. 250.122(F).",
  fields: {
    overcurrent: field.amperes("rating of the overcurrent device").max(1200),
    material: field.material,
    leastSize: field.size.describe("least ungrounded conductor that serves"),
    usedSize: field.size.describe("ungrounded conductor in use"),
    raceways: field.count("raceways of the parallel sets"),
    edition: field.edition,
  },
  example: { overcurrent: 400, material: "copper", leastSize: "3/0", usedSize: "3/0", raceways: 2, edition: "2023" },
  run: parallelGrounding,
});
