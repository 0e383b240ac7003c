import { writeFileSync } from "node:fs";
import { mkdir, mkdtemp, readdir, readFile, rm, stat, symlink, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { OutputExistsError, writeWhole } from "./atomic-write.js";
import { EnvironmentError } from "./environment-error.js";

let dir: string;
beforeEach(async () => {
  dir = await mkdtemp(join(tmpdir(), "branchwork-write-"));
});
afterEach(() => rm(dir, { recursive: true, force: true }));

const set = (...names: string[]) => names.map((name) => ({ name, bytes: Buffer.from(`new ${name}`) }));

describe("writeWhole", () => {
  it("makes the directory and writes every file", async () => {
    const out = join(dir, "a", "b");
    expect(await writeWhole(out, set("x.pdf", "x.html"))).toEqual([join(out, "x.pdf"), join(out, "x.html")]);
    expect((await readdir(out)).sort()).toEqual(["x.html", "x.pdf"]);
    expect(await readFile(join(out, "x.pdf"), "utf8")).toBe("new x.pdf");
  });

  it("does not overwrite without force, and writes none of the set", async () => {
    await writeFile(join(dir, "two"), "old");
    await expect(writeWhole(dir, set("one", "two"))).rejects.toThrow(OutputExistsError);
    expect(await readdir(dir)).toEqual(["two"]);
    expect(await readFile(join(dir, "two"), "utf8")).toBe("old");
  });

  it("leaves a file that holds the same bytes already, and writes the rest", async () => {
    await writeWhole(dir, set("one"));
    const { ino } = await stat(join(dir, "one"));
    expect(await writeWhole(dir, set("one", "two"))).toEqual([join(dir, "one"), join(dir, "two")]);
    expect((await stat(join(dir, "one"))).ino).toBe(ino);
    expect(await readFile(join(dir, "two"), "utf8")).toBe("new two");
  });
  it("takes a link to the same bytes for a file in the way", async () => {
    await writeFile(join(dir, "elsewhere"), "new one");
    await symlink(join(dir, "elsewhere"), join(dir, "one"));
    await expect(writeWhole(dir, set("one", "two"))).rejects.toThrow(OutputExistsError);
    expect((await readdir(dir)).sort()).toEqual(["elsewhere", "one"]);
  });
  it("overwrites with force and leaves nothing beside", async () => {
    await writeFile(join(dir, "two"), "old");
    await writeWhole(dir, set("one", "two"), { force: true });
    expect((await readdir(dir)).sort()).toEqual(["one", "two"]);
    expect(await readFile(join(dir, "two"), "utf8")).toBe("new two");
  });

  it("takes the set back when a later file fails: old content stands again", async () => {
    await writeFile(join(dir, "one"), "old");
    const long = "n".repeat(240); // its own name fits a file system's 255 bytes, its temporary name does not
    await expect(writeWhole(dir, set("one", long), { force: true })).rejects.toThrow(EnvironmentError);
    expect(await readdir(dir)).toEqual(["one"]);
    expect(await readFile(join(dir, "one"), "utf8")).toBe("old");
  });

  it("takes the set back when naming fails after the first file was named", async () => {
    const late = {
      name: "two",
      // Read after the check that nothing is in the way: another process's file appears at the worst moment.
      get bytes() {
        writeFileSync(join(dir, "two"), "another's");
        return "new two";
      },
    };
    await expect(writeWhole(dir, [...set("one"), late])).rejects.toThrow(OutputExistsError);
    expect(await readdir(dir)).toEqual(["two"]);
    expect(await readFile(join(dir, "two"), "utf8")).toBe("another's");
  });

  it("never overwrites a directory, force or not", async () => {
    await writeFile(join(dir, "one"), "old");
    await mkdir(join(dir, "two"));
    await expect(writeWhole(dir, set("one", "two"), { force: true })).rejects.toThrow(OutputExistsError);
    expect((await readdir(dir)).sort()).toEqual(["one", "two"]);
    expect(await readFile(join(dir, "one"), "utf8")).toBe("old");
  });

  it("says which directory cannot be written", async () => {
    await writeFile(join(dir, "file"), "");
    await expect(writeWhole(join(dir, "file", "below"), set("one"))).rejects.toThrow(EnvironmentError);
  });

  it.each(["", ".", "..", "a/b", "../a", "a\\b", "a\0b"])("refuses %j as a name", async (name) => {
    await expect(writeWhole(dir, [{ name, bytes: "" }])).rejects.toThrow(RangeError);
  });

  it("refuses one name twice", async () => {
    await expect(writeWhole(dir, set("one", "one"))).rejects.toThrow(RangeError);
  });
});
