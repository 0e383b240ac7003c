import { spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, describe, expect, it } from "vitest";
import { KINDS } from "../src/new/starters.js";

const root = fileURLToPath(new URL("../../../", import.meta.url));
const scratch = mkdtempSync(join(tmpdir(), "branchwork-command-"));
afterAll(() => rmSync(scratch, { recursive: true }));

function branchwork(args: readonly string[], input = "") {
  const { status, stdout, stderr } = spawnSync(process.execPath, [join(root, "apps/packet/dist/main.js"), ...args], { cwd: scratch, input, encoding: "utf8" });
  return { status, stdout, stderr };
}
const job = (name: string) => join(root, "fixtures/jobs", `${name}.yaml`);
const town = join(root, "fixtures/overlays/tamarack-hollow.yaml");

describe("check", () => {
  it.each(["rv-50-carport", "rv-30-small-service", "ev-48-attic"])("%s is ready: exit 0", (name) => {
    const { status, stdout } = branchwork(["check", job(name), "--json"]);
    expect(JSON.parse(stdout).ready).toBe(true);
    expect(status).toBe(0);
  });
  it("the bad job breaks at least eight rules: exit 1", () => {
    const { status, stdout } = branchwork(["check", job("bad-everything"), "--json"]);
    const failed = new Set(
      JSON.parse(stdout)
        .findings.filter((f: { verdict: string }) => f.verdict === "fail")
        .map((f: { check: string }) => f.check),
    );
    for (const check of ["cable-wet", "breaker-poles", "conductor-size", "box-volume", "breaker-adjacent-spaces", "service-capacity", "burial-cover", "gfci"])
      expect(failed).toContain(check);
    expect(status).toBe(1);
  });
  it("an edition on the command line governs: no GFCI finding under 2017", () => {
    const { stdout } = branchwork(["check", job("bad-everything"), "--edition", "2017", "--json"]);
    const findings = JSON.parse(stdout).findings as { check: string; verdict: string }[];
    expect(findings.filter((f) => f.check === "gfci").every((f) => f.verdict === "not-applicable")).toBe(true);
  });
});

describe("bad input: one clear message with file and line, exit 2, nothing written", () => {
  it.each([
    ["a unit that is not one", "rating: 150 A", "rating: 150 parsecs", /:\d+:\d+: service\.rating.*\n?.*mend:/s],
    ["a field that is not one", "format: branchwork-job/1", "format: branchwork-job/1\ncolour: blue", /:\d+:\d+: .*colour/],
    ["an edition that is not one", 'edition: "2', 'edition: "1', /edition/],
  ])("%s", (_what, from, to, message) => {
    const text = readFileSync(job("rv-50-carport"), "utf8");
    expect(text).toContain(from);
    const file = join(scratch, "bent.yaml");
    writeFileSync(file, text.replace(from, to));
    const { status, stderr, stdout } = branchwork(["build", file, "--out", "bent-out", "--format", "html"]);
    expect(stderr).toMatch(message);
    expect(stdout).toBe("");
    expect(status).toBe(2);
    expect(readdirSync(scratch)).not.toContain("bent-out");
  });
  it("no such file", () => expect(branchwork(["check", "nowhere.yaml"]).status).toBe(2));
  it("no such format", () => expect(branchwork(["build", job("rv-50-carport"), "--format", "docx"]).status).toBe(2));
  it("no such option", () => expect(branchwork(["check", job("rv-50-carport"), "--nonsense"]).status).toBe(2));
  it("an overlay whose base value is wrong", () => {
    const file = join(scratch, "town.yaml");
    writeFileSync(file, readFileSync(town, "utf8").replace("replaces: 18", "replaces: 17"));
    const { status, stderr } = branchwork(["check", job("rv-50-carport"), "--overlay", file]);
    expect(stderr).toMatch(/17 in/);
    expect(status).toBe(2);
  });
  it("a browser that is not there: exit 3", () =>
    expect(branchwork(["build", job("rv-50-carport"), "--out", "none", "--browser", "/nowhere/browser"]).status).toBe(3));
});

describe("build", () => {
  it("same input and date, byte-identical PDF, HTML, JSON and SVG; a run with other content refuses to overwrite", () => {
    const args = (out: string) => ["build", job("rv-50-carport"), "--overlay", town, "--out", out, "--date", "2026-11-25"];
    expect(branchwork(args("one")).status).toBe(0);
    expect(branchwork(args("two")).status).toBe(0);
    const names = readdirSync(join(scratch, "one")).sort();
    expect(names).toEqual(expect.arrayContaining(["rv-50-carport.html", "rv-50-carport.json", "rv-50-carport.pdf", "rv-50-carport.svg"]));
    for (const name of names) expect(readFileSync(join(scratch, "one", name)).equals(readFileSync(join(scratch, "two", name))), name).toBe(true);
    expect(branchwork(args("one")).status).toBe(0);
    const other = branchwork([...args("one").slice(0, -1), "2026-11-24"]);
    expect(other).toMatchObject({ status: 2, stderr: expect.stringMatching(/already there: .*rv-50-carport\.pdf/) });
  });
  it("builds one set after another into one folder: the design they share stays as it is", () => {
    const args = (set: string) => ["build", job("range"), "--set", set, "--out", "sets", "--format", "html,json", "--date", "2026-11-25"];
    expect([branchwork(args("owner")).status, branchwork(args("submittal,field")).status]).toEqual([0, 0]);
    expect(readdirSync(join(scratch, "sets")).sort()).toEqual(["range-field.html", "range-owner.html", "range.html", "range.json"]);
  });
  it("prints on the paper the overlay asks, unless another is named", () => {
    const html = (out: string, ...more: readonly string[]) => {
      expect(
        branchwork(["build", job("range"), "--overlay", join(root, "fixtures/overlays/saltmarsh-point.yaml"), "--out", out, "--format", "html", ...more])
          .status,
      ).toBeLessThan(2);
      return readFileSync(join(scratch, out, "range.html"), "utf8");
    };
    expect(html("asked")).toContain("size: 17in 11in");
    expect(html("named", "--paper", "letter")).not.toContain("size: 17in 11in");
  });
  it("the bad job's packet opens with its refusal: exit 1", () => {
    const { status } = branchwork(["build", job("bad-everything"), "--out", "bad", "--format", "html", "--date", "2026-11-25"]);
    expect(status).toBe(1);
    const html = readFileSync(join(scratch, "bad", "bad-everything.html"), "utf8");
    expect(html.search(/not ready/i)).toBeGreaterThan(0);
    expect(html.search(/not ready/i)).toBeLessThan(html.indexOf("One-line diagram"));
  });
  it("one number on every sheet: the service current of the design stands in the HTML", () => {
    branchwork(["build", job("ev-48-attic"), "--out", "ev", "--format", "html,json", "--date", "2026-11-25"]);
    const design = JSON.parse(readFileSync(join(scratch, "ev", "ev-48-attic.json"), "utf8"));
    const html = readFileSync(join(scratch, "ev", "ev-48-attic.html"), "utf8");
    expect(html.split(`${design.service.amperes.value}\u{A0}A`).length).toBeGreaterThan(2);
  });
});

describe("new", () => {
  it("writes a job that reads and checks, from empty answers, and will not overwrite it", () => {
    const { status } = branchwork(["new", "fresh.yaml"], "\n".repeat(10));
    expect(status).toBe(0);
    expect([0, 1]).toContain(branchwork(["check", "fresh.yaml"]).status);
    expect(branchwork(["new", "fresh.yaml"], "\n".repeat(10)).status).toBe(2);
  });
  it("an answer cannot become structure", () => {
    branchwork(["new", "sly.yaml"], `rv-50\nAnn\nhere", owner: "x\n${"\n".repeat(10)}`);
    expect([0, 1]).toContain(branchwork(["check", "sly.yaml"]).status);
  });
  it.each(KINDS)("begins a job of the kind %s in which no check fails", (kind) => {
    const loads = "Range 10 kW, Water heater, electric 4.5 kW";
    const { status } = branchwork(
      ["new", `${kind}.yaml`],
      `${kind}\nAnn\nHere\n2023\n200 A\n30\n9\n1500 ft2\n${loads.replace(", electric", "")}\n${"\n".repeat(3)}`,
    );
    expect(status).toBe(0);
    expect(branchwork(["check", `${kind}.yaml`])).toMatchObject({ status: 0, stdout: expect.stringContaining("no check fails") });
  });
  it.each([
    ["a kind there is not", "sauna\n", /"sauna" is not one of rv-50, .*choose one of them/s],
    ["a space beyond the panel's", "\n\n\n\n\n\n99\n", /"99" is not a whole number from 1 to 84/],
    ["loads without a unit", `${"\n".repeat(8)}Range 10\n`, /"Range 10" is not a name and a load.*Range 10 kW/s],
  ])("%s ends it with one message and nothing written", (_what, typed, says) => {
    const { status, stderr } = branchwork(["new", "never.yaml"], typed);
    expect({ status, stderr }).toEqual({ status: 2, stderr: expect.stringMatching(says) });
    expect(branchwork(["check", "never.yaml"]).status).toBe(2);
  });
});

describe("help", () => {
  it("shows examples first and the exit codes, exit 0", () => {
    const { status, stdout } = branchwork(["--help"]);
    expect(status).toBe(0);
    expect(stdout.indexOf("Examples")).toBeLessThan(stdout.indexOf("Usage"));
    expect(stdout).toContain("Exit codes");
  });
});
