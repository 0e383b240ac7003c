import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { EDITIONS } from "../src/basis/edition.js";
import { CHECKS } from "../src/checks/registry.js";
import { compareAllEditions, compareEditions } from "../src/comparing/compare-editions.js";
import { readJob } from "../src/job/read.js";

function fixture(name: string) {
  const read = readJob(readFileSync(new URL(`../../../fixtures/jobs/${name}.yaml`, import.meta.url), "utf8"));
  if (!read.ok) throw new Error(JSON.stringify(read.issues));
  return read.job;
}

const folder = new URL("../src/tables/", import.meta.url);
const tables: readonly Record<string, unknown>[] = await Promise.all(readdirSync(folder).map((file) => import(new URL(file, folder).href)));
const isTable = (value: unknown): value is { readonly id: string; readonly sections: Readonly<Record<string, unknown>> } =>
  typeof value === "object" && value !== null && "id" in value && "sections" in value && "rows" in value;
const TABLES = tables.flatMap((module) => Object.values(module).filter(isTable));

describe("every edition has exactly one answer", () => {
  it("finds the tables", () => expect(TABLES.length).toBeGreaterThan(20));
  it.each(TABLES.map((table) => [table.id, table] as const))("table %s", (_id, table) => {
    expect(Object.keys(table.sections).sort()).toEqual([...EDITIONS]);
    for (const edition of EDITIONS) expect(table.sections[edition]).toMatch(/\S/);
  });
  it.each(CHECKS.filter((check) => check.rule !== null).map((check) => [check.id, check] as const))("check %s", (_id, check) => {
    const sections = check.rule!.sections as Readonly<Record<string, unknown>>;
    expect(Object.keys(sections).sort()).toEqual([...EDITIONS]);
    for (const edition of EDITIONS) expect(sections[edition] === null || /\S/.test(String(sections[edition]))).toBe(true);
    expect(EDITIONS.some((edition) => sections[edition] !== null)).toBe(true);
  });
  it("check ids are told apart", () => expect(new Set(CHECKS.map(({ id }) => id)).size).toBe(CHECKS.length));
});

describe("what changes if the town adopts another edition", () => {
  it("nothing, from an edition to itself", () =>
    expect(compareEditions({ job: fixture("bad-everything"), from: "2023", to: "2023" })).toMatchObject({ findings: [], values: [], sections: [] }));
  it("Article 220 becomes 120 in 2026 (moved, as the load tables have it)", () => {
    const { sections } = compareEditions({ job: fixture("garage-subpanel"), from: "2020", to: "2026" });
    expect(sections.find((s) => s.id === "measured-record")).toEqual(expect.objectContaining({ of: "check", before: ["220.87"], after: ["120.87"] }));
  });
  it("GFCI for an outlet over 125 V appears with 2020 (2017: 210.8(A) covers 125 V; published rows in gfci)", () => {
    const { findings } = compareEditions({ job: fixture("bad-everything"), from: "2017", to: "2020" });
    expect(findings.filter((f) => f.check === "gfci").map((f) => f.kind)).toContain("appears");
    const back = compareEditions({ job: fixture("bad-everything"), from: "2020", to: "2017" });
    expect(back.findings.filter((f) => f.check === "gfci").map((f) => f.kind)).toContain("vanishes");
  });
  it("each edition against the next", () =>
    expect(compareAllEditions({ job: fixture("ev-48-attic") }).map(({ from, to }) => `${from} ${to}`)).toEqual(["2017 2020", "2020 2023", "2023 2026"]));
});
