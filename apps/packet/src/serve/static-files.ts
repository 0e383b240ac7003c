import { readdir, readFile, realpath } from "node:fs/promises";
import { extname, join } from "node:path";

/** A file held in memory, ready to be sent. */
export interface StaticFile {
  readonly bytes: Uint8Array;
  readonly media: string;
}

const MEDIA: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".json": "application/json; charset=utf-8",
  ".webmanifest": "application/manifest+json; charset=utf-8",
  ".svg": "image/svg+xml; charset=utf-8",
  ".png": "image/png",
  ".woff2": "font/woff2",
  ".txt": "text/plain; charset=utf-8",
};
const MOST_BYTES = 64 * 2 ** 20;

/**
 * The files of a built page by the path they are asked for under, all read now: a request is looked up in this map and never
 * reaches the disk. Links, hidden files and kinds a page has no use for are left out. Null where there is no index.html.
 */
export async function staticFiles(folder: string): Promise<ReadonlyMap<string, StaticFile> | null> {
  const files = new Map<string, StaticFile>();
  let total = 0;
  const root = await realpath(folder).catch(() => null); // not built
  if (root === null) return null;
  async function take(inside: string): Promise<void> {
    for (const entry of await readdir(join(root as string, inside), { withFileTypes: true })) {
      const path = `${inside}/${entry.name}`;
      if (entry.name.startsWith(".")) continue;
      if (entry.isDirectory()) await take(path);
      const media = MEDIA[extname(entry.name).toLowerCase()];
      if (!entry.isFile() || media === undefined) continue;
      const bytes = await readFile(join(root as string, path));
      total += bytes.length;
      if (total > MOST_BYTES) throw new RangeError(`${folder} holds more than ${MOST_BYTES} bytes of pages`);
      files.set(path, { bytes, media });
    }
  }
  await take("");
  const index = files.get("/index.html");
  if (index === undefined) return null;
  return files.set("/", index);
}
