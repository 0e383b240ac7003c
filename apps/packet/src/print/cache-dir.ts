import { lstatSync, mkdirSync } from "node:fs";
import { homedir, tmpdir } from "node:os";
import { join } from "node:path";
import { EnvironmentError } from "./environment-error.js";

/**
 * The program's own cache directory, made if absent, closed to other users (0700).
 * Order: XDG_CACHE_HOME, the home directory, then the temporary directory with the user's number in the name.
 */
export function openCacheDir(env: Readonly<Record<string, string | undefined>>): string {
  const uid = process.getuid?.() ?? 0;
  const home = env.HOME ?? homedir();
  const candidates = [
    ...(env.XDG_CACHE_HOME?.startsWith("/") ? [join(env.XDG_CACHE_HOME, "branchwork")] : []),
    ...(home ? [join(home, ".cache", "branchwork")] : []),
    join(tmpdir(), `branchwork-${uid}`),
  ];
  const reasons: string[] = [];
  for (const dir of candidates) {
    try {
      mkdirSync(dir, { recursive: true, mode: 0o700 });
      assertPrivate(dir, uid);
      return dir;
    } catch (error) {
      reasons.push(`${dir}: ${error instanceof Error ? error.message : String(error)}`);
    }
  }
  throw new EnvironmentError(`no directory to unpack the browser into (${reasons.join("; ")})`, { hint: "set XDG_CACHE_HOME to a directory you own" });
}

// A directory another user can write to, or owns, could hand us a planted program.
function assertPrivate(dir: string, uid: number): void {
  const stat = lstatSync(dir);
  if (!stat.isDirectory()) throw new Error("not a directory");
  if (process.getuid && stat.uid !== uid) throw new Error("belongs to another user");
  if (process.getuid && (stat.mode & 0o022) !== 0) throw new Error("other users may write to it");
}
