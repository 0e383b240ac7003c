import * as z from "zod";
import * as field from "./fields.js";

/** One way of a run by Table 9. */
export const conductor = z.strictObject({
  size: field.size,
  material: field.material,
  conduit: field.conduit,
  feet: field.feet("one way"),
  celsius: field.celsius("conductor temperature, 75 when left out").optional(),
  parallel: field.count("conductors in parallel, 1 when left out").optional(),
});

/** A chain of conductors by Table 9. */
export const segments = field.list(
  conductor.extend({ neutral: field.size.optional().describe("size of the neutral where it is not that of the hots") }),
  "segments in order from the source",
);
