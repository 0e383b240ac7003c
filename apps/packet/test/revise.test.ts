import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, afterEach, describe, expect, it, vi } from "vitest";
import { build } from "../src/build.js";
import { nextNumber } from "../src/carried/earlier.js";
import { verify } from "../src/carried/verify.js";
import { attachFiles } from "../src/print/attach.js";
import { readAttachments } from "../src/print/attachments.js";
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
  const status = await revise(old, changed, { date: "2026-11-25", out: folder, format: "html", force: false, ...options });
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
    expect(page).toMatch(/<td>Δ1<\/td><td class="revision"><span class="nb">2026-11-25<\/span><\/td><td><span class="cut">see P-\d<\/span>/);
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

describe("a revision of a revised packet", () => {
  const town = join(root, "fixtures/overlays/tamarack-hollow.yaml");
  const file = (name: string, text: string) => {
    const path = join(scratch, name);
    writeFileSync(path, text);
    return path;
  };
  const text = readFileSync(old, "utf8");
  // One file name throughout, as somebody has who changes the one job file.
  const first = { job: file("job.yaml", text), out: join(scratch, "set-0") };
  const set = (n: number) => join(scratch, `set-${n}`, "job.pdf");
  const quiet = async (work: () => Promise<number>) => {
    const out: string[] = [];
    vi.spyOn(console, "log").mockImplementation((said: string) => void out.push(said));
    vi.spyOn(console, "error").mockImplementation((said: string) => void out.push(said));
    return { status: await work(), out: out.join("\n") };
  };
  const next = (n: number, change: string, options: Partial<ReviseOptions> = {}) => {
    writeFileSync(first.job, change);
    return quiet(() => revise(set(n - 1), first.job, { date: `2026-11-0${n}`, out: join(scratch, `set-${n}`), format: "pdf,html", ...options }));
  };
  const html = (n: number) => readFileSync(join(scratch, `set-${n}`, "job.html"), "utf8");
  const rows = (n: number) =>
    [...html(n).matchAll(/<td>(Δ\w+)<\/td><td><span class="nb">(2026-[\d-]+)<\/span><\/td><td>([^<]*)<\/td>/g)].map(([, ...cells]) => cells);

  it("numbers on, keeps the earlier rows, marks what changed this time alone, and verifies as printed", async () => {
    expect((await quiet(() => build(first.job, { overlay: town, date: "2026-10-30", out: first.out, format: "pdf" }))).status).toBe(0);
    await next(1, longer(text), { what: "Longer trench" });
    const wired = longer(text).replace("gfci: true", "gfci: false");
    expect((await next(2, wired, { what: "Other breaker" })).status).toBe(1);
    expect(rows(2)).toEqual([
      ["Δ1", "2026-11-01", "Longer trench"],
      ["Δ2", "2026-11-02", "Other breaker"],
    ]);
    expect(html(1)).toMatch(/<h1[^>]*>P-\d+ Δ1 Trench/);
    expect(html(2)).not.toMatch(/<h1[^>]*>P-\d+ Δ\d Trench/);
    expect(html(2).split("Δ1")).toHaveLength(2);
    // The overlay comes along inside the packet.
    expect(html(2)).toContain("Town of Tamarack Hollow");
    for (const n of [1, 2]) {
      const { status, out } = await quiet(() => verify(set(n), { json: true }));
      expect(JSON.parse(out)).toMatchObject({ pagesIntact: true, numbersHold: true, sheetsHold: true });
      expect(status).toBe(0);
    }
  }, 120_000);
  it("carries the earlier job beside the job of the same name, and the table", () => {
    const carried = readAttachments(readFileSync(set(2)));
    const named = (name: string) => Buffer.from(carried.find((one) => one.name === name)!.bytes).toString();
    expect(named("was-job.yaml")).toBe(longer(text));
    expect(named("job.yaml")).toContain("gfci: false");
    const manifest = JSON.parse(named("packet.json"));
    expect(manifest.revisions.map(({ number }: { number: string }) => number)).toEqual(["1", "2"]);
    expect(manifest.was).toMatchObject({ job: "was-job.yaml", overlay: "was-overlay-tamarack-hollow.yaml" });
  });
  it("a packet that carries another earlier job than its marks go by does not hold as printed", async () => {
    const bytes = readFileSync(set(2));
    const files = readAttachments(bytes).map((one) => (one.name === "was-job.yaml" ? { ...one, bytes: Buffer.from(text) } : one));
    const manifest = JSON.parse(Buffer.from(files.find(({ name }) => name === "packet.json")!.bytes).toString()) as { pages: { bytes: number } };
    const other = join(scratch, "other.pdf");
    writeFileSync(other, attachFiles(bytes.subarray(0, manifest.pages.bytes), files, { date: new Date("2026-11-02T00:00:00Z") }));
    const { status, out } = await quiet(() => verify(other, { json: true }));
    expect(JSON.parse(out)).toMatchObject({ pagesIntact: true, numbersHold: true, sheetsHold: false });
    expect(status).toBe(1);
  });
  it.each([
    ["a number that is there", { number: "2" }, /revision 2 of 2026-11-02 is in the packet's table/],
    ["an earlier overlay that it carries", { oldOverlay: town }, /carries the overlay it was made with/],
  ])("%s: exit 2", async (_what, options, message) => {
    const { status, out } = await next(3, text, options);
    expect(out).toMatch(message);
    expect(status).toBe(2);
  });
  it.each([
    ["A", "B"],
    ["9", "10"],
  ])("after %s comes %s", (last, number) => expect(nextNumber(undefined, [{ number: last, date: "", says: "" }])).toBe(number));
  it("after Z nobody knows", () => expect(() => nextNumber(undefined, [{ number: "Z", date: "", says: "" }])).toThrow(/give --number/));
});
