import * as z from "zod";
import * as field from "./fields.js";

export const outlet = z
  .enum(["four-wire", "one-hot", "two-hot"])
  .describe("what reaches the outlet besides the ground: four-wire is two hots and neutral, one-hot a hot and neutral, two-hot two hots");

/** The way from the panel to the outlet. */
export const stretches = field.list(
  z.strictObject({
    size: field.size,
    material: field.material,
    grounding: field.size.describe("size of the grounding conductor"),
    groundingMaterial: field.material.optional(),
    feet: field.feet("one way"),
  }),
  "stretches of the run in order",
);

/** Two terminals of an outlet, between which a meter reads or a load is. */
export const pair = z.enum(["L1-N", "L2-N", "L1-L2", "L1-G", "L2-G", "N-G"]);
