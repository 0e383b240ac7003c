import { z } from "zod";
import { jobSchema } from "./schema.js";

/** JSON Schema of the job file as people write it, for editors. */
export function jobJsonSchema(): object {
  return z.toJSONSchema(jobSchema, { io: "input", target: "draft-2020-12", unrepresentable: "any" });
}
