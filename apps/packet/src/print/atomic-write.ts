import { randomBytes } from "node:crypto";
import { link, lstat, mkdir, open, readFile, rename, rm, rmdir, unlink } from "node:fs/promises";
import { basename, join } from "node:path";
import { EnvironmentError } from "./environment-error.js";

/** A file to write: a plain name and its content. */
export interface OutputFile {
  readonly name: string;
  readonly bytes: Uint8Array | string;
}

/** Files that must not be overwritten are in the way. */
export class OutputExistsError extends Error {
  override readonly name = "OutputExistsError";
  constructor(readonly paths: readonly string[]) {
    super(`already there: ${paths.join(", ")}`);
  }
}

/**
 * Writes a set of files into `dir` (made if absent), the whole set or nothing: all content is on disk under temporary names
 * before the first file takes its name, and an error takes back those already named. Without `force` an existing file stops
 * the write (OutputExistsError), unless it holds the same bytes already: then it stays as it is. A power cut between two renames can still leave a part of the set, each file itself whole.
 */
export async function writeWhole(dir: string, files: readonly OutputFile[], { force = false }: { force?: boolean } = {}): Promise<string[]> {
  assertNames(files);
  const mark = randomBytes(6).toString("hex");
  const all = files.map((file) => ({
    file,
    target: join(dir, file.name),
    fresh: join(dir, `.${file.name}.${mark}.new`),
    saved: join(dir, `.${file.name}.${mark}.old`),
  }));
  let jobs: typeof all = [];
  let made: string | undefined;
  const undo: (() => Promise<void>)[] = [];
  try {
    made = await mkdir(dir, { recursive: true });
    const same = await Promise.all(all.map(({ target, file }) => !force && holds(target, file.bytes)));
    jobs = all.filter((_, i) => same[i] !== true);
    await assertFree(
      jobs.map(({ target }) => target),
      force,
    );
    for (const { fresh, file } of jobs) {
      await writeSynced(fresh, file.bytes);
      undo.push(() => rm(fresh, { force: true }));
    }
    for (const { target, fresh, saved } of jobs) {
      if (force && (await kindOf(target)) === "file") {
        await rename(target, saved);
        undo.push(() => rename(saved, target));
      }
      await takeName(fresh, target);
      undo.push(() => rm(target, { force: true }));
    }
    await syncDir(dir);
  } catch (error) {
    for (const step of undo.reverse()) await step();
    if (made !== undefined) await rmdir(dir).catch(() => undefined); // another process may have put something there
    throw explain(dir, error);
  }
  for (const { saved } of jobs) await rm(saved, { force: true });
  return all.map(({ target }) => target);
}

function assertNames(files: readonly OutputFile[]): void {
  const names = new Set<string>();
  for (const { name } of files) {
    if (name === "" || name === "." || name === ".." || name !== basename(name) || /[\\\0]/.test(name))
      throw new RangeError(`not a plain file name: ${JSON.stringify(name)}`);
    if (names.has(name)) throw new RangeError(`two files named ${name}`);
    names.add(name);
  }
}

// A directory in the way is never overwritten, force or not.
async function assertFree(targets: readonly string[], force: boolean): Promise<void> {
  const taken: string[] = [];
  for (const target of targets) {
    const kind = await kindOf(target);
    if (kind === "directory" || (kind === "file" && !force)) taken.push(target);
  }
  if (taken.length > 0) throw new OutputExistsError(taken);
}

/** Whether a plain file with just these bytes is there; a link is none. */
async function holds(path: string, bytes: Uint8Array | string): Promise<boolean> {
  const content = Buffer.from(bytes as Uint8Array);
  try {
    const there = await lstat(path);
    return there.isFile() && there.size === content.byteLength && (await readFile(path)).equals(content);
  } catch (error) {
    if (codeOf(error) === "ENOENT") return false;
    throw error;
  }
}

async function kindOf(path: string): Promise<"none" | "file" | "directory"> {
  try {
    return (await lstat(path)).isDirectory() ? "directory" : "file";
  } catch (error) {
    if (codeOf(error) === "ENOENT") return "none";
    throw error;
  }
}

async function writeSynced(path: string, bytes: Uint8Array | string): Promise<void> {
  const file = await open(path, "wx", 0o644);
  try {
    await file.writeFile(bytes);
    await file.sync();
  } catch (error) {
    await rm(path, { force: true });
    throw error;
  } finally {
    await file.close();
  }
}

// A link fails where a rename would overwrite a file made since we looked. Some file systems have no links: there we rename.
async function takeName(fresh: string, target: string): Promise<void> {
  try {
    await link(fresh, target);
  } catch (error) {
    if (codeOf(error) === "EEXIST") throw new OutputExistsError([target]);
    if (!["EPERM", "ENOTSUP", "EOPNOTSUPP", "ENOSYS"].includes(codeOf(error) ?? "")) throw error;
    await rename(fresh, target);
    return;
  }
  await unlink(fresh);
}

async function syncDir(dir: string): Promise<void> {
  if (process.platform === "win32") return; // a directory cannot be opened there
  const handle = await open(dir, "r");
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}

function explain(dir: string, error: unknown): unknown {
  const code = codeOf(error);
  if (code === undefined || !["EACCES", "EPERM", "EROFS", "ENOSPC", "EDQUOT", "ENOTDIR", "EEXIST", "EISDIR", "ENAMETOOLONG"].includes(code)) return error;
  return new EnvironmentError(`cannot write into ${dir}: ${(error as Error).message}`, {
    hint: "choose another output directory or mend its permissions",
    cause: error,
  });
}

function codeOf(error: unknown): string | undefined {
  const code = error instanceof Error ? (error as NodeJS.ErrnoException).code : undefined;
  return typeof code === "string" ? code : undefined;
}
