import { chmod, mkdir, mkdtemp, readdir, rm, stat, truncate, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { findBrowser, installedCandidates } from "./browser.js";
import { findPacked, unpackBrowser } from "./bundled.js";
import { openCacheDir } from "./cache-dir.js";
import { EnvironmentError } from "./environment-error.js";

let dir: string;
beforeEach(async () => {
  dir = await mkdtemp(join(tmpdir(), "branchwork-browser-test-"));
});
afterEach(() => rm(dir, { recursive: true, force: true }));

describe("findBrowser", () => {
  it("stops at a named browser that cannot be run and never takes another", async () => {
    await expect(findBrowser({ named: join(dir, "absent"), env: {} })).rejects.toThrow(EnvironmentError);
    await expect(findBrowser({ env: { BRANCHWORK_BROWSER: dir } })).rejects.toThrow(/is not a program/);
  });

  it("takes the named one as it is, the option before the variable", async () => {
    const named = join(dir, "mine");
    await writeFile(named, "#!/bin/sh\n");
    await chmod(named, 0o755);
    expect(await findBrowser({ named, env: { BRANCHWORK_BROWSER: "/absent" } })).toEqual({ executable: named, origin: "named", env: {} });
  });

  it("looks along PATH for the headless shell before the full browser", () => {
    expect(installedCandidates({ PATH: "/p:/q" }, "linux").slice(0, 3)).toEqual(["/p/chromium-headless-shell", "/q/chromium-headless-shell", "/p/chromium"]);
  });
});

describe("openCacheDir", () => {
  it("makes a directory only its owner can enter", async () => {
    const cache = openCacheDir({ XDG_CACHE_HOME: dir, HOME: dir });
    expect(cache).toBe(join(dir, "branchwork"));
    expect((await stat(cache)).mode & 0o777).toBe(0o700);
  });

  it("passes by a directory others can write to", async () => {
    await mkdir(join(dir, "branchwork"));
    await chmod(join(dir, "branchwork"), 0o777);
    expect(openCacheDir({ XDG_CACHE_HOME: dir, HOME: dir })).toBe(join(dir, ".cache", "branchwork"));
  });
});

describe.runIf(process.platform === "linux" && process.arch === "x64")("unpackBrowser", () => {
  it("lets two racers end with one whole copy and no rubbish, and mends a damaged one", async () => {
    const packed = await findPacked();
    if (!packed) throw new Error("the bundled browser is not installed");
    const [one, two] = await Promise.all([unpackBrowser(packed, dir), unpackBrowser(packed, dir)]);
    expect(one).toEqual(two);
    expect(await readdir(dir)).toEqual([`chromium-${packed.version}-linux-x64`]);
    const whole = (await stat(one.executable)).size;
    expect(whole).toBeGreaterThan(100_000_000);
    expect((await stat(one.executable)).mode & 0o777).toBe(0o700);

    await truncate(one.executable, 1000);
    await unpackBrowser(packed, dir);
    expect((await stat(one.executable)).size).toBe(whole);
    expect(await readdir(dir)).toEqual([`chromium-${packed.version}-linux-x64`]);
  });
});
