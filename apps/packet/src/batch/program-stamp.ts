import { createHash } from "node:crypto";
import { readdir, readFile } from "node:fs/promises";
import { dirname, join, relative } from "node:path";
import { fileURLToPath } from "node:url";

/**
 * What stands for the program in a digest: its version and the content of its modules, so that a changed table makes every
 * packet anew even under the same version. The browser and the font are not in it.
 */
export async function programStamp(): Promise<string> {
  const { version } = JSON.parse(await readFile(new URL("../../package.json", import.meta.url), "utf8")) as { version: string };
  const folders = [
    fileURLToPath(new URL("..", import.meta.url)),
    ...["@branchwork/engine", "@branchwork/sheets"].map((name) => dirname(fileURLToPath(import.meta.resolve(name)))),
  ];
  const hash = createHash("sha256");
  for (const folder of folders) {
    const entries = await readdir(folder, { recursive: true, withFileTypes: true });
    const files = entries.filter((entry) => entry.isFile() && /(?<!\.d|\.test)\.[jt]s$/.test(entry.name)).map((entry) => join(entry.parentPath, entry.name));
    for (const file of files.sort())
      hash
        .update(relative(folder, file))
        .update("\0")
        .update(await readFile(file));
  }
  return `${version}+${hash.digest("hex").slice(0, 16)}`;
}
