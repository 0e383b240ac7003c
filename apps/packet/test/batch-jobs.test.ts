import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, realpathSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { performance } from "node:perf_hooks";
import { afterAll, beforeEach, describe, expect, it } from "vitest";
import { findJobs } from "../src/batch/find-jobs.js";
import { readJobBytes } from "../src/batch/make-row.js";
import { isOfShard, readShard } from "../src/batch/shard.js";

const scratch = realpathSync(mkdtempSync(join(tmpdir(), "branchwork-find-")));
afterAll(() => rmSync(scratch, { recursive: true }));
let root: string;
let count = 0;
beforeEach(() => {
  count += 1;
  root = join(scratch, `${count}`);
  mkdirSync(root);
});
const put = (...names: string[]) => {
  for (const name of names) {
    mkdirSync(dirname(join(root, name)), { recursive: true });
    writeFileSync(join(root, name), "");
  }
};
const names = async (inputs: string[], except: string[] = []) =>
  (
    await findJobs(
      inputs.map((input) => join(root, input)),
      except.map((path) => join(root, path)),
    )
  ).map(({ name }) => name);

describe("findJobs", () => {
  it("takes only .yaml, .yml and .job, at any depth, sorted, no hidden ones", async () => {
    put("b.yaml", "a/c.yml", "a/d.job", "a/e.YAML", "f.txt", "g.yaml.bak", "yaml", ".hidden.yaml", ".git/h.yaml");
    expect(await names(["."])).toEqual(["a/c.yml", "a/d.job", "a/e.YAML", "b.yaml"]);
  });
  it("names jobs from the folder they have in common", async () => {
    put("one/a.yaml", "two/deep/a.yaml");
    expect(await names(["one", "two/deep"])).toEqual(["one/a.yaml", "two/deep/a.yaml"]);
    expect(await names(["two/deep/a.yaml"])).toEqual(["a.yaml"]);
  });
  it("takes each once, however often it is named", async () => {
    put("a.yaml", "s/b.yaml");
    expect(await names([".", "a.yaml", "s", "*.yaml"])).toEqual(["a.yaml", "s/b.yaml"]);
  });
  it("passes the output folder and the overlay over", async () => {
    put("a.yaml", "out/x.yaml", "town.yaml");
    expect(await names(["."], ["out", "town.yaml"])).toEqual(["a.yaml"]);
  });
  it("matches globs", async () => {
    put("a.yaml", "s/b.yaml", "s/t/c.yaml", "s/t/d.txt");
    expect(await names(["*.yaml"])).toEqual(["a.yaml"]);
    expect(await names(["s/*.{yaml,txt}"])).toEqual(["b.yaml"]);
    expect(await names(["**/*.yaml"])).toEqual(["a.yaml", "s/b.yaml", "s/t/c.yaml"]);
  });
  it("takes a name with glob characters as itself when there is one", async () => {
    put("[a]/b.yaml", "a/b.yaml");
    expect((await findJobs([join(root, "[a]")], []))[0]?.path).toBe(join(root, "[a]/b.yaml"));
  });
  it.each([["nowhere"], ["nowhere.yaml"], ["*.nothing"], ["nowhere/*.yaml"], ["f.txt"], ["empty"]])("refuses %s, which names no job", async (input) => {
    put("a.yaml", "f.txt", "empty/f.txt");
    await expect(names([input])).rejects.toThrow(/mend:/);
  });
  it("gives each job a folder of its own", async () => {
    put("x.yaml", "x.yml", "X.job", "x.yaml.yaml", "s/x.yaml");
    const folders = (await findJobs([root], [])).map(({ folder }) => folder);
    expect(new Set(folders.map((folder) => folder.toLowerCase())).size).toBe(5);
    expect(folders).toContain("s/x");
  });
  it("survives links in circles, to itself, to nowhere, and names what two ways reach by its own path", async () => {
    put("real/a.yaml", "real/deep/b.yaml");
    symlinkSync("..", join(root, "real/deep/up"));
    symlinkSync(root, join(root, "all"));
    symlinkSync("real", join(root, "A-link"));
    symlinkSync("self.yaml", join(root, "self.yaml"));
    symlinkSync("nowhere.yaml", join(root, "lost.yaml"));
    symlinkSync("real/a.yaml", join(root, "a-again.yaml"));
    // The two links that lead nowhere are jobs that cannot be read: the report says so.
    expect(await names(["."])).toEqual(["lost.yaml", "real/deep/b.yaml", "self.yaml", expect.stringMatching(/a-again|real\/a/)].sort());
  });
  it("lists 10,000 files in seconds", async () => {
    for (let folder = 0; folder < 10; folder += 1) put(...Array.from({ length: 1000 }, (_, i) => `${folder}/${i}.yaml`));
    const start = performance.now();
    expect(await findJobs([root], [])).toHaveLength(10_000);
    expect(performance.now() - start).toBeLessThan(10_000);
  });
});

describe("shards", () => {
  it("are a partition: every job in exactly one part, whatever the number of parts", () => {
    const jobs = Array.from({ length: 2000 }, (_, i) => `street/${i}.yaml`);
    for (const of of [1, 2, 3, 7, 64]) {
      const parts = Array.from({ length: of }, (_, i) => jobs.filter((job) => isOfShard(job, { index: i + 1, of })));
      expect(parts.flat().sort()).toEqual([...jobs].sort());
      expect(parts.every((part) => part.length > 0)).toBe(true);
    }
  });
  it.each(["0/4", "5/4", "1", "a/b", "1/0", "-1/4", "1.5/4", "1/4 "])("refuses %s", (text) => expect(() => readShard(text)).toThrow(/mend/));
  it("reads 4/4", () => expect(readShard("4/4")).toEqual({ index: 4, of: 4 }));
});

it.skipIf(process.platform === "win32")("a pipe that nobody writes to is refused, not waited for", async () => {
  const folder = mkdtempSync(join(tmpdir(), "branchwork-pipe-"));
  try {
    const path = join(folder, "job.yaml");
    expect(spawnSync("mkfifo", [path]).status).toBe(0);
    await expect(readJobBytes({ path, name: "job.yaml" })).rejects.toThrow(/job\.yaml: a pipe or a device, not a file/);
  } finally {
    rmSync(folder, { recursive: true });
  }
});
