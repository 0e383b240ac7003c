import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, describe, expect, it } from "vitest";

const root = fileURLToPath(new URL("../../../", import.meta.url));
const scratch = mkdtempSync(join(tmpdir(), "branchwork-buying-"));
afterAll(() => rmSync(scratch, { recursive: true }));

function branchwork(args: readonly string[]) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [join(root, "apps/packet/dist/main.js"), ...args], { cwd: scratch, encoding: "utf8" });
  return { status, stdout, stderr };
}
const job = (name: string) => join(root, "fixtures/jobs", `${name}.yaml`);
const prices = join(root, "fixtures/prices/demo.yaml");

describe("materials", () => {
  it("JSON with a price for every row of the demo: exit 0", () => {
    const { status, stdout } = branchwork(["materials", job("rv-50-carport"), "--prices", prices, "--json"]);
    const said = JSON.parse(stdout);
    expect(said.rows.length).toBeGreaterThan(10);
    expect(said.priced.unpriced).toEqual([]);
    expect(status).toBe(0);
  });
  it("CSV has its head", () => expect(branchwork(["materials", job("rv-50-carport"), "--csv"]).stdout).toMatch(/^item,quantity,unit,/));
  it("a job that is not ready: exit 1", () => expect(branchwork(["materials", job("bad-everything")]).status).toBe(1));
  it("a price book with a fault: file, line, column, exit 2", () => {
    const file = join(scratch, "prices.yaml");
    writeFileSync(
      file,
      'format: branchwork-prices/1\ncurrency: USD\ndate: "2026-03-01"\nsource: x\nitems:\n  label: { unit: each, low: 3, likely: 2, high: 1 }\n',
    );
    const { status, stderr } = branchwork(["materials", job("rv-50-carport"), "--prices", file]);
    expect(stderr).toMatch(/prices\.yaml:6:\d+: items\.label/);
    expect(status).toBe(2);
  });
  it("CSV and JSON together: exit 2", () => expect(branchwork(["materials", job("rv-50-carport"), "--csv", "--json"]).status).toBe(2));
});

describe("choose", () => {
  it("a lawful way for each run: exit 0", () => {
    const { status, stdout } = branchwork(["choose", job("ev-48-attic"), "--prices", prices, "--json"]);
    expect(JSON.parse(stdout).runs).toEqual([expect.objectContaining({ found: true })]);
    expect(status).toBe(0);
  });
  it("without prices: exit 2", () => expect(branchwork(["choose", job("ev-48-attic")]).status).toBe(2));
});

describe("compare", () => {
  it("the load sections move in 2026", () => {
    const { stdout } = branchwork(["compare", job("garage-subpanel"), "--from", "2020", "--to", "2026"]);
    expect(stdout).toMatch(/220\.87 -> 120\.87/);
  });
  it("an edition that is not one: exit 2", () => expect(branchwork(["compare", job("garage-subpanel"), "--from", "1999", "--to", "2026"]).status).toBe(2));
});
