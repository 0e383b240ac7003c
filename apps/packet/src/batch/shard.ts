import { createHash } from "node:crypto";
import { InputError } from "../load-design.js";

/** One of several parts of a batch: the index counts from 1. */
export interface Shard {
  readonly index: number;
  readonly of: number;
}

/** Reads "i/n". */
export function readShard(text: string): Shard {
  const [, index, of] = (/^(\d{1,6})\/(\d{1,6})$/.exec(text) ?? []).map(Number);
  if (index === undefined || of === undefined || index < 1 || index > of)
    throw new InputError("--shard", [{ path: "", what: `"${text}" is not a part`, mend: "write 1/8 for the first of eight, up to 8/8" }]);
  return { index, of };
}

/** Whether a job is this part's: by its name alone, so that a job added moves no other. */
export function isOfShard(name: string, { index, of }: Shard): boolean {
  return createHash("sha256").update(name).digest().readUInt32BE(0) % of === index - 1;
}
