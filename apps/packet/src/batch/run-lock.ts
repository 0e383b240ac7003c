import { readFileSync } from "node:fs";
import { mkdir, open, readFile, rm } from "node:fs/promises";
import { hostname } from "node:os";
import { dirname } from "node:path";
import { EnvironmentError } from "../print/environment-error.js";

interface Holder {
  readonly pid: number;
  readonly host: string;
  readonly started: string;
}

/**
 * Keeps a second run of the same report away while this one lives. A lock whose process is gone is taken over, and so is one of
 * another machine, which cannot be asked: there packets stay whole, but a row may be written twice.
 * @returns the release.
 */
export async function lockRun(path: string): Promise<() => Promise<void>> {
  const self: Holder = { pid: process.pid, host: hostname(), started: startOf(process.pid) ?? "" };
  for (let attempt = 0; attempt < 3; attempt += 1) {
    try {
      await mkdir(dirname(path), { recursive: true });
      const file = await open(path, "wx");
      await file.writeFile(JSON.stringify(self));
      await file.close();
      return () => rm(path, { force: true });
    } catch (error) {
      const { code, message } = error as NodeJS.ErrnoException;
      if (code !== "EEXIST")
        throw new EnvironmentError(`${path} cannot be made: ${message}`, { hint: "free space, mend permissions or choose another folder", cause: error });
    }
    const holder = await readHolder(path);
    if (holder && holder.host === self.host && startOf(holder.pid) === holder.started && holder.pid !== self.pid)
      throw new EnvironmentError(`another run (process ${holder.pid}) is writing here`, { hint: "wait for it, or give another --out or --shard" });
    await rm(path, { force: true });
  }
  throw new EnvironmentError(`${path} is taken again and again`, { hint: "give each run its own --out or --shard" });
}

async function readHolder(path: string): Promise<Holder | undefined> {
  try {
    return JSON.parse(await readFile(path, "utf8")) as Holder;
  } catch {
    return undefined; // gone meanwhile, or torn by a kill
  }
}

// A process number comes round again; with its start time it is one process. Elsewhere than on Linux the number alone counts.
function startOf(pid: number): string | undefined {
  try {
    if (process.platform !== "linux") return process.kill(pid, 0) ? "alive" : undefined;
    const stat = readFileSync(`/proc/${pid}/stat`, "utf8");
    return stat.slice(stat.lastIndexOf(")") + 2).split(" ")[19];
  } catch {
    return undefined; // no such process
  }
}
