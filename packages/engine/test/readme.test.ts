import { spawnSync } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";

const engine = fileURLToPath(new URL("../", import.meta.url));
const sections = readFileSync(`${engine}README.md`, "utf8").split(/^## /m);
const runnable = sections.flatMap((section) =>
  [...section.matchAll(/^```js\n([\s\S]*?)^```$/gm)].map(([, code]) => ({ title: section.split("\n")[0]!, code: code! })),
);

describe("the README", () => {
  it("has examples, and the package is built", () => {
    expect(runnable.length).toBeGreaterThanOrEqual(5);
    expect(existsSync(`${engine}dist/index.js`)).toBe(true);
  });
  it.each(runnable)("$title: prints what the example says it prints", ({ code }) => {
    // The package by its own name, as built: what is evaluated stands, to Node, in the folder it runs in.
    const { stdout, stderr } = spawnSync(process.execPath, ["--input-type=module", "--eval", code], { cwd: engine, encoding: "utf8" });
    const said = [...code.matchAll(/\/\/ → (.*)$/gm)].map(([, line]) => line);
    expect(stderr).toBe("");
    expect(said.length).toBeGreaterThan(0);
    expect(stdout.trimEnd().split("\n")).toEqual(said);
  });
  it("states the ceilings that pack-check holds", () => {
    const script = readFileSync(`${engine}../../scripts/pack-check.mjs`, "utf8");
    const held = [...script.matchAll(/kB: (\d+),/g)].map(([, kB]) => Number(kB)).sort((a, b) => a - b);
    const stated = [...readFileSync(`${engine}README.md`, "utf8").matchAll(/^\| .* \| (\d+) kB \|$/gm)].map(([, kB]) => Number(kB));
    expect(stated).toEqual(held);
  });
});

describe("the API reference", () => {
  it("is up to date with the doc comments", () => {
    const { status, stderr } = spawnSync(process.execPath, [`${engine}../../scripts/api-reference.mjs`, "--verify"], { encoding: "utf8" });
    expect(stderr).toBe("");
    expect(status).toBe(0);
  });
});
