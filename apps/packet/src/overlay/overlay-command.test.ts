import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { PassThrough, Readable } from "node:stream";
import { fileURLToPath } from "node:url";
import { readOverlay } from "@branchwork/sheets";
import { afterAll, afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { loadDesign } from "../load-design.js";
import { checkOverlay } from "./check-overlay.js";
import { overlayCommand } from "./command.js";
import { diffOverlays } from "./diff-overlays.js";
import { explainOverlay } from "./explain-overlay.js";
import { newOverlay } from "./new-overlay.js";
import { idFrom } from "./overlay-text.js";

const fixture = (path: string) => fileURLToPath(new URL(`../../../../fixtures/${path}`, import.meta.url));
const shipped = (name: string) => fixture(`overlays/${name}.yaml`);
const scratch = mkdtempSync(join(tmpdir(), "branchwork-overlay-"));
afterAll(() => rmSync(scratch, { recursive: true }));
const write = (name: string, text: string) => {
  const path = join(scratch, name);
  writeFileSync(path, text);
  return path;
};

let out: string[];
let err: string[];
beforeEach(() => {
  [out, err] = [[], []];
  vi.spyOn(console, "log").mockImplementation((text) => void out.push(String(text)));
  vi.spyOn(console, "error").mockImplementation((text) => void err.push(String(text)));
});
afterEach(() => vi.restoreAllMocks());
const json = () => JSON.parse(out.join("\n"));

const TOWN = `format: branchwork-overlay/1
id: town
name: Sample Town
extends: county
checked_on: "2026-06-30"
amendments:
  - { target: cover, row: general, replaces: 18, value: 24, reason: frost, citation: Bylaw 1 }
`;
const COUNTY = `format: branchwork-overlay/1
id: county
name: Sample County
edition: "2023"
checked_on: "2026-01-31"
`;

describe("overlay check", () => {
  it.each(["saltmarsh-point", "ironbridge-mills", "quillback-county", "otter-fell", "tamarack-hollow", "base-2026"])("%s: exit 0", async (name) => {
    expect(await checkOverlay(shipped(name), { date: "2026-11-25" })).toBe(0);
    expect(err).toEqual([]);
  });
  it("says what is old, and that in JSON too", async () => {
    expect(await checkOverlay(shipped("otter-fell"), { date: "2027-06-01", json: true })).toBe(0);
    expect(json()).toMatchObject({ format: "branchwork-overlay-check/1", ok: true, issues: [] });
    expect(json().cautions[0]).toContain("275 days"); // 30 August 2026 to 1 June 2027: 1+30+31+30+31+31+28+31+30+31+1
  });
  it("an issue of the basis stands at its file and line, also in the extended file: exit 2", async () => {
    write("county.yaml", COUNTY);
    expect(await checkOverlay(write("town.yaml", TOWN.replace("replaces: 18", "replaces: 17")), {})).toBe(2);
    expect(err.join("\n")).toMatch(/town\.yaml:7:\d+: amendments\.0\.replaces: 17 in .*\n {4}mend:/);
    err = [];
    write("county.yaml", `${COUNTY}fees:\n  - { id: s, kind: surcharge, says: S, percent: 2, of: [none], citation: C }\n`);
    expect(await checkOverlay(write("town.yaml", TOWN), {})).toBe(2);
    expect(err.join("\n")).toMatch(/county\.yaml:7:\d+: fees\.0\.of\.0/);
  });
  it("a file that is not there, and a parent that is not: exit 2", async () => {
    expect(await checkOverlay(join(scratch, "nowhere.yaml"), {})).toBe(2);
    expect(await checkOverlay(write("lone.yaml", TOWN.replace("extends: county", "extends: nobody")), {})).toBe(2);
    expect(err.join("\n")).toContain("nobody");
  });
  it("files in a circle: exit 2", async () => {
    write("b.yaml", COUNTY.replace("edition:", "extends: a\nedition:"));
    expect(await checkOverlay(write("a.yaml", TOWN.replace("extends: county", "extends: b")), {})).toBe(2);
    expect(err.join("\n")).toContain("a → b → a");
  });
});

describe("overlay explain", () => {
  it("gives file and line of every field of the result", async () => {
    expect(await explainOverlay(shipped("ironbridge-mills"), { json: true })).toBe(0);
    const fields = json().fields as { path: string; value: unknown; file: string; line: number }[];
    const lineIn = (name: string, text: string) =>
      readFileSync(shipped(name), "utf8")
        .split("\n")
        .findIndex((line) => line.includes(text)) + 1;
    expect(fields).toContainEqual(
      expect.objectContaining({ path: "intake.copies", value: 3, file: "ironbridge-mills", line: lineIn("ironbridge-mills", "at: intake.copies") }),
    );
    expect(fields).toContainEqual(expect.objectContaining({ path: "edition", value: "2023", file: "base-2023", line: lineIn("base-2023", "edition: ") }));
    expect(fields).toContainEqual(expect.objectContaining({ path: "zoning.says", file: "saltmarsh-point", line: lineIn("saltmarsh-point", "may be stored") }));
    for (const field of fields) expect(field.line).toBeGreaterThan(0);
  });
});

describe("overlay diff", () => {
  it("names fields that differ, and with a job the findings, fees, sheets and statements", async () => {
    const job = fixture("jobs/rv-50-carport.yaml");
    expect(await diffOverlays(shipped("saltmarsh-point"), shipped("ironbridge-mills"), { job, date: "2026-11-25", json: true })).toBe(0);
    const { fields, job: made } = json();
    expect(fields).toContainEqual({ path: "fees.permit.amount", before: 88, after: 120 });
    // 65 + 88 + 15 + 2.5 % of 153 (3.825, 3.83) − half of 65 (32.50); then 65 + 120 + 15 + 2.5 % of 185 (4.625, 4.63).
    expect([made.fees.before, made.fees.after]).toEqual(["139.33", "204.63"]);
    expect(made.ready).toEqual([true, false]);
    expect(made.findings).toContainEqual(expect.objectContaining({ check: "local-wiring-methods", after: expect.stringContaining("fail") }));
    expect(made.sheets.only_after).toContain("Not ready to submit");
    expect(made.statements.only_after.join()).toContain("measured the cover");
  });
  it("says of each sheet that comes or goes that it is one of the submittal, by its title", async () => {
    const job = fixture("jobs/rv-50-carport.yaml");
    expect(await diffOverlays(shipped("saltmarsh-point"), shipped("otter-fell"), { job, date: "2026-11-25" })).toBe(0);
    const lines = out.join("\n").split("\n");
    expect(lines).toContain('- the submittal no longer has the sheet "Site plan"');
    expect(lines).toContain('+ the submittal has a further sheet, "Inspection card"');
    expect(lines.some((line) => /^[-+] sheet/.test(line))).toBe(false);
  });
  it("a file against itself: no difference", async () => {
    expect(await diffOverlays(shipped("otter-fell"), shipped("otter-fell"), { date: "2026-11-25" })).toBe(0);
    expect(out).toEqual(["no difference"]);
  });
});

describe("overlay new", () => {
  const answer = (name: string, text: string) => newOverlay(join(scratch, name), { input: Readable.from([text]), output: new PassThrough() }, {});
  it("writes from empty answers an overlay that reads and checks, and will not overwrite it", async () => {
    expect(await answer("fresh.yaml", "\n".repeat(20))).toBe(0);
    expect(await checkOverlay(join(scratch, "fresh.yaml"), {})).toBe(0);
    expect(await answer("fresh.yaml", "\n".repeat(20))).toBe(2);
  });
  it("takes answers", async () => {
    expect(await answer("mine.yaml", ["Fern Township", "Bylaw 7", "2020", "2021-05-01", "over-the-counter", "letter", "no", "45.50", "12"].join("\n"))).toBe(0);
    const read = readOverlay(readFileSync(join(scratch, "mine.yaml"), "utf8"));
    if (!read.ok) throw new Error(JSON.stringify(read.issues));
    expect(read.overlay).toMatchObject({ id: "fern-township", name: "Fern Township", edition: "2020", intake: { mode: "over-the-counter" } });
    expect(read.overlay.fees.map((f) => f.kind)).toEqual(["flat", "per-circuit"]);
    expect(read.overlay.who_may_work[0]?.may).toBe(false);
  });
  it("an answer cannot become structure, and a wrong choice is refused", async () => {
    expect(await answer("sly.yaml", 'X", id: "y\nA: b # c\n')).toBe(0);
    const read = readOverlay(readFileSync(join(scratch, "sly.yaml"), "utf8"));
    expect(read.ok && read.overlay.name).toBe('X", id: "y');
    expect(await answer("bad.yaml", "Town\nBylaw\n2019\n")).toBe(2);
  });
  it("a day that is none is told at its question, with nothing written", async () => {
    expect(await answer("day.yaml", "Town\nBylaw\n2020\nJanuary 1, 2025\n")).toBe(2);
    expect(err.join()).toContain('From which day, as 2024-01-01?: "January 1, 2025" is not a day');
    expect(existsSync(join(scratch, "day.yaml"))).toBe(false);
  });
  it("a person is asked again after a slip", async () => {
    const input = Object.assign(Readable.from([["Town", "Bylaw", "2019", "2020", "1 May", "2021-05-01", "letter", "", ""].join("\n")]), { isTTY: true });
    expect(await newOverlay(join(scratch, "again.yaml"), { input, output: new PassThrough() }, {})).toBe(0);
    const read = readOverlay(readFileSync(join(scratch, "again.yaml"), "utf8"));
    expect(read.ok && [read.overlay.edition, read.overlay.adoption?.from]).toEqual(["2020", "2021-05-01"]);
  });
  it("what is not known is left out or told as not asked yet, never printed as a rule", async () => {
    await answer("empty.yaml", "\n".repeat(20));
    const read = readOverlay(readFileSync(join(scratch, "empty.yaml"), "utf8"));
    expect(read.ok && [read.overlay.zoning, read.overlay.contacts]).toEqual([undefined, undefined]);
    expect(await checkOverlay(join(scratch, "empty.yaml"), { json: true })).toBe(0);
    expect(json().cautions.join()).toMatch(/^Not asked yet: adoption\.citation, intake\.citation, .*Ask the jurisdiction/);
  });
  it.each([
    ["Town of Älm 3", "town-of-lm-3"],
    ["3 Rivers", "rivers"],
    ["???", "jurisdiction"],
  ])("%s gets the id %s", (name, id) => expect(idFrom(name)).toBe(id));
});

describe("a job with an overlay that extends another", () => {
  it("is designed with the whole of it, and its text stands alone", async () => {
    const { overlay, sources } = await loadDesign(fixture("jobs/rv-50-carport.yaml"), { overlay: shipped("ironbridge-mills") });
    expect(overlay?.intake?.copies).toBe(3);
    expect(overlay?.edition).toBe("2023");
    const again = readOverlay(sources.overlay?.text ?? "");
    expect(again.ok && again.overlay.extends).toBe(undefined);
    expect(again.ok && again.overlay.intake?.copies).toBe(3);
  });
});

describe("the command", () => {
  it("has its four commands, each with --json", () => {
    const command = overlayCommand();
    expect(command.commands.map((c) => c.name())).toEqual(["new", "check", "explain", "diff"]);
    for (const sub of command.commands) expect(sub.options.map((o) => o.long)).toContain("--json");
  });
});
