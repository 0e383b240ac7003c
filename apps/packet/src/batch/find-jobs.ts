import type { Dirent, Stats } from "node:fs";
import { readdir, realpath, stat } from "node:fs/promises";
import { basename, dirname, extname, join, relative, resolve, sep } from "node:path";
import picomatch from "picomatch";
import { InputError } from "../load-design.js";

/** A job file of a batch. */
export interface FoundJob {
  /** Where it is. */
  readonly path: string;
  /** Its name in the report: the path from the folder all jobs have in common, with "/" between. */
  readonly name: string;
  /** The folder of its packet below the packets: its name without the ending, where no other job has the same. */
  readonly folder: string;
  /** The name its files carry. */
  readonly stem: string;
}

const ENDINGS = [".yaml", ".yml", ".job"];
const isJob = (path: string) => ENDINGS.includes(extname(path).toLowerCase());
const wrong = (file: string, what: string, mend: string) => new InputError(file, [{ path: "", what, mend }]);

/**
 * The job files that folders, files and globs name, sorted by name, each once. Folders are searched whole; hidden entries and
 * those of `except` (the output folder, the overlay) are passed over, and a folder reached again through a link is not entered
 * again. Throws InputError when an argument names nothing.
 */
export async function findJobs(named: readonly string[], except: readonly string[]): Promise<FoundJob[]> {
  const walk: Walk = { entered: new Set(), taken: new Map(), except: new Set(await Promise.all(except.map(realOrSame))) };
  const bases: string[] = [];
  for (const argument of named) bases.push(await gather(argument, walk));
  const paths = [...walk.taken.values()];
  if (paths.length === 0) throw wrong(named.join(" "), "no job file there", `a job's name ends in ${ENDINGS.join(", ")}`);
  return name(paths, commonFolder(bases));
}

interface Walk {
  readonly entered: Set<string>;
  /** Real path → the path it was found by. */
  readonly taken: Map<string, string>;
  readonly except: ReadonlySet<string>;
}

/** @returns the folder from which the argument's jobs are named. */
async function gather(argument: string, walk: Walk): Promise<string> {
  const path = resolve(argument);
  const found = await statOrNone(path);
  if (found?.isDirectory()) {
    await search(path, walk, isJob);
    return path;
  }
  if (found) {
    if (!isJob(path)) throw wrong(argument, "not the name of a job file", `a job's name ends in ${ENDINGS.join(", ")}`);
    await take(path, walk);
    return dirname(path);
  }
  const { base, glob } = picomatch.scan(argument.split(sep).join("/"));
  if (glob === "") throw wrong(argument, "there is no such file or folder", "give job files, folders of them or a glob");
  const folder = resolve(base);
  const matches = picomatch(glob);
  if (!(await statOrNone(folder))?.isDirectory()) throw wrong(argument, `there is no folder ${base}`, "give the glob from a folder that is there");
  let matched = 0;
  // A folder searched for another argument is searched again: this one may match other files of it.
  await search(folder, { ...walk, entered: new Set() }, (file) => {
    const chosen = isJob(file) && matches(relative(folder, file).split(sep).join("/"));
    if (chosen) matched += 1;
    return chosen;
  });
  if (matched === 0) throw wrong(argument, "the glob matches no job file", `a job's name ends in ${ENDINGS.join(", ")}`);
  return folder;
}

// Folders first and links after: what is reached both ways goes by its own path.
async function search(root: string, walk: Walk, wanted: (path: string) => boolean): Promise<void> {
  const folders = [root];
  const links: string[] = [];
  for (let folder = folders.shift() ?? links.shift(); folder !== undefined; folder = folders.shift() ?? links.shift()) {
    const real = await realpath(folder);
    if (walk.entered.has(real) || walk.except.has(real)) continue;
    walk.entered.add(real);
    for (const entry of await entries(folder)) {
      if (entry.name.startsWith(".")) continue;
      const path = join(folder, entry.name);
      if (entry.isDirectory()) folders.push(path);
      else if (entry.isFile() && wanted(path)) await take(path, walk, join(real, entry.name));
      else if (entry.isSymbolicLink()) {
        const target = await statOrNone(path);
        if (target?.isDirectory()) links.push(path);
        else if (wanted(path)) await take(path, walk);
      }
    }
  }
}

async function entries(folder: string): Promise<Dirent[]> {
  try {
    return (await readdir(folder, { withFileTypes: true })).sort((a, b) => (a.name < b.name ? -1 : 1));
  } catch (error) {
    throw wrong(folder, `the folder cannot be read (${(error as NodeJS.ErrnoException).code})`, "mend its permissions");
  }
}

async function take(path: string, walk: Walk, real?: string): Promise<void> {
  const key = real ?? (await realOrSame(path));
  if (!walk.except.has(key) && !walk.taken.has(key)) walk.taken.set(key, path);
}

// A link that leads nowhere or in a circle is told as none; a job file among such is told when it is read.
async function statOrNone(path: string): Promise<Stats | undefined> {
  try {
    return await stat(path);
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code ?? "";
    if (["ENOENT", "ELOOP", "ENOTDIR", "ENAMETOOLONG"].includes(code)) return undefined;
    throw wrong(path, `cannot be read (${code})`, "mend its permissions");
  }
}

async function realOrSame(path: string): Promise<string> {
  return realpath(path).catch(() => resolve(path)); // not there yet, or a link to nowhere
}

function commonFolder(folders: readonly string[]): string {
  const [first = "", ...rest] = folders.map((folder) => folder.split(sep));
  const parts = [...first];
  for (const other of rest) {
    const differ = parts.findIndex((part, i) => part !== other[i]);
    if (differ >= 0) parts.length = differ;
  }
  return parts.join(sep) || sep;
}

function name(paths: readonly string[], from: string): FoundJob[] {
  // A link may lead out of the common folder, never the path it was found by.
  const names = paths.map((path) => ({ path, name: relative(from, path).split(sep).join("/") })).sort((a, b) => (a.name < b.name ? -1 : 1));
  const bare = (full: string) => full.slice(0, full.length - extname(full).length);
  // Told apart by the ending where they would share a folder, also on a disk that takes A for a.
  const folders = new Map(names.map(({ name: full }) => [full, bare(full)]));
  for (let again = true; again; ) {
    again = false;
    const count = new Map<string, number>();
    for (const folder of folders.values()) count.set(folder.toLowerCase(), (count.get(folder.toLowerCase()) ?? 0) + 1);
    for (const [full, folder] of folders)
      if (folder !== full && (count.get(folder.toLowerCase()) ?? 0) > 1) {
        folders.set(full, full);
        again = true;
      }
  }
  return names.map(({ path, name: full }) => ({ path, name: full, folder: folders.get(full) ?? full, stem: bare(basename(full)) }));
}
