import { z } from "zod";
import { overlaySchema } from "./schema.js";

/** The JSON Schema (draft 2020-12) of an overlay file as people write it, for editors. The reader stays the judge. */
export function overlayJsonSchema(): Readonly<Record<string, unknown>> {
  return { ...z.toJSONSchema(overlaySchema, { io: "input" }), title: "Branchwork overlay" };
}
