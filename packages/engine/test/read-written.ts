import { stringify } from "yaml";
import { readJob } from "../src/job/read.js";
import type { Job } from "../src/job/schema.js";

/** A written job as the reader gives it; throws with its issues where it does not read. */
export function readWritten(written: object): Job {
  const read = readJob(stringify(written, { aliasDuplicateObjects: false }));
  if (!read.ok) throw new Error(JSON.stringify(read.issues));
  return read.job;
}
