import * as z from "zod";
import { jobSchema } from "./schema.js";

/** The JSON Schema (draft 2020-12) of a job file as people write it, for editors. The reader stays the judge: it also knows units and cross-references. */
export function jobJsonSchema(): Readonly<Record<string, unknown>> {
  return { ...z.toJSONSchema(jobSchema, { io: "input" }), title: "Branchwork job" };
}
