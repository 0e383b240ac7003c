import * as z from "zod";
import { markedForFewer } from "../sizing/pull-box.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const pullBoxMarkingCalculation = calculation({
  name: "pull-box-marking",
  title: "Whether a smaller pull box serves by its marking",
  about:
    "A box smaller than the dimensions of 314.28(A)(1) and (2) serves where its marking names at least as many conductors and as large ones. 314.28(A)(3).",
  fields: {
    marking: z
      .strictObject({ count: field.count("conductors"), largest: field.size })
      .nullable()
      .describe("what the box is marked for, null without marking"),
    conductors: z.strictObject({ count: field.count("conductors"), largest: field.size }).describe("what it holds"),
  },
  example: { marking: { count: 6, largest: "2/0" }, conductors: { count: 4, largest: "1/0" } },
  run: ({ id, ...given }) => ({ id, serves: markedForFewer(given) }),
});
