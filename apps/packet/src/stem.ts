import { basename, extname } from "node:path";
import { InputError } from "./load-design.js";

/** In bytes: with a set's name, an ending and the marks of a file not yet whole it stays below the 255 of common disks. */
const LONGEST = 150;

/** The name that the files of a job's packet carry: the job file's without its ending. Throws InputError where it can be none. */
export function stemOf(job: string): string {
  const wrong = (what: string) => new InputError(job, [{ path: "", what, mend: "rename the file" }]);
  const name = basename(job);
  if (/[\\\p{Cc}]/u.test(name)) throw wrong("the name has a backslash or a control character in it");
  const stem = basename(name, extname(name));
  if (Buffer.byteLength(stem) > LONGEST) throw wrong(`the name is longer than ${LONGEST} bytes`);
  return stem;
}
