import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, afterEach, describe, expect, it, vi } from "vitest";
import { type ReviseOptions, revise } from "../src/revise.js";

const root = fileURLToPath(new URL("../../../", import.meta.url));
const old = join(root, "fixtures/jobs/rv-50-carport.yaml");
const scratch = mkdtempSync(join(tmpdir(), "branchwork-revise-"));
afterAll(() => rmSync(scratch, { recursive: true }));
afterEach(() => vi.restoreAllMocks());

let made = 0;
async function run(change: (text: string) => string, options: Partial<ReviseOptions> = {}) {
  const out: string[] = [];
  const err: string[] = [];
  vi.spyOn(console, "log").mockImplementation((text: string) => void out.push(text));
  vi.spyOn(console, "error").mockImplementation((text: string) => void err.push(text));
  const changed = join(scratch, `job-${++made}.yaml`);
  writeFileSync(changed, change(readFileSync(old, "utf8")));
  const folder = join(scratch, `out-${made}`);
  const status = await revise(old, changed, { number: "1", date: "2026-11-25", out: folder, format: "html", force: false, ...options });
  const html = () => readFileSync(join(folder, `job-${made}.html`), "utf8");
  return { status, out: out.join("\n"), err: err.join("\n"), html };
}
const longer = (text: string): string => {
  const changed = text.replace(/(place: buried[^}]*length: )\d+ ft/, "$1120 ft");
  expect(changed).not.toBe(text);
  return changed;
};

describe("revise", () => {
  it("tells inputs, values and sheets, and marks them with the triangle", async () => {
    const { out, html } = await run(longer, { what: "Longer trench round the oak" });
    expect(out).toMatch(/^input: .*length: \d+ -> 120$/m);
    expect(out).toMatch(/^worked: .*drop/im);
    const page = html();
    expect(page).toContain("Δ1 Revisions");
    expect(page).toContain("Longer trench round the oak");
    expect(page).toMatch(/<h1[^>]*>P-\d+ Δ1 Schedules/);
    expect(page).not.toMatch(/<h1[^>]*>P-\d+ Δ1 Panel directory/);
    expect(page).toMatch(/<td>Δ1<\/td><td>2026-11-25<\/td><td><span class="cut">see P-\d<\/span>/);
  });
  it("numbers and index agree after the sheet is put in", async () => {
    const page = (await run(longer)).html();
    const ids = [...page.matchAll(/<section class="sheet" id="(P-\d+)"/g)].map((m) => m[1]);
    expect(ids).toEqual(ids.map((_, i) => `P-${i + 1}`));
    for (const id of ids) expect(page.split(`href="#${id}"`)).toHaveLength(2);
  });
  it("the same job marks nothing", async () => {
    const { out, html } = await run((text) => text);
    expect(out).not.toMatch(/^(input|worked|finding):/m);
    expect(html()).toContain("nothing was entered otherwise");
    expect(html().match(/<h1[^>]*>P-\d+ Δ1/g)).toHaveLength(1);
  });
  it("an installation made bad: exit 1, the finding told", async () => {
    const { status, out } = await run((text) => text.replace("gfci: true", "gfci: false"), { json: true });
    const told = JSON.parse(out);
    expect(told.changes.some((c: { kind: string; now: string }) => c.kind === "finding" && c.now.startsWith("fail"))).toBe(true);
    expect(status).toBe(1);
  });
  it.each([
    ["a number that is none", { number: "one two" }, /--number/],
    ["a date that is none", { date: "yesterday" }, /--date/],
  ])("%s: exit 2", async (_what, options, message) => {
    const { status, err } = await run(longer, options);
    expect(err).toMatch(message);
    expect(status).toBe(2);
  });
});
