import { type ChildProcess, spawn, spawnSync } from "node:child_process";
import { once } from "node:events";
import { appendFileSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, relative } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import { fileURLToPath } from "node:url";
import { afterAll, beforeEach, describe, expect, it } from "vitest";
import type { Row } from "../src/batch/row.js";

const root = fileURLToPath(new URL("../../../", import.meta.url));
const main = join(root, "apps/packet/dist/main.js");
const fixture = (name: string) => readFileSync(join(root, "fixtures/jobs", `${name}.yaml`), "utf8");
const good = fixture("rv-30-small-service");
const town = join(root, "fixtures/overlays/tamarack-hollow.yaml");
const top = mkdtempSync(join(tmpdir(), "branchwork-batch-"));
afterAll(() => rmSync(top, { recursive: true }));

let scratch: string;
let count = 0;
beforeEach(() => {
  count += 1;
  scratch = join(top, `${count}`);
  mkdirSync(scratch);
});
function put(name: string, text: string) {
  const path = join(scratch, "jobs", name);
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, text);
}
const numbered = (n: number) => good.replace(/^( {2}title: )(.*)$/m, `$1Job ${n}`);
const fill = (howMany: number) => {
  for (let n = 1; n <= howMany; n += 1) put(`street-${n % 3}/job-${n}.yaml`, numbered(n));
};

const args = (out: string, ...more: string[]) => [main, "batch", join(scratch, "jobs"), "--out", join(scratch, out), "--date", "2026-11-25", ...more];
function batch(out: string, ...more: string[]) {
  const { status, stdout, stderr } = spawnSync(process.execPath, args(out, ...more), { encoding: "utf8" });
  return { status, stdout, stderr };
}
const quick = ["--format", "html"];
const rowsOf = (out: string, report = "report.jsonl") =>
  readFileSync(join(scratch, out, report), "utf8")
    .split("\n")
    .filter((line) => line.includes('"branchwork-batch-row/1"'))
    .map((line) => JSON.parse(line) as Row);
/** Every file below a folder by its path, hidden ones too. */
const contents = (out: string) =>
  Object.fromEntries(
    readdirSync(join(scratch, out), { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => join(entry.parentPath, entry.name))
      .sort()
      .map((path) => [relative(join(scratch, out), path), readFileSync(path).toString("latin1")]),
  );
const begin = (out: string, ...more: string[]) => spawn(process.execPath, args(out, ...more), { stdio: ["ignore", "pipe", "pipe"] });
async function until(holds: () => boolean) {
  for (let i = 0; i < 1200 && !holds(); i += 1) await sleep(25);
  if (!holds()) throw new Error("did not come about");
}
const madeSoFar = (out: string) => (existsSync(join(scratch, out, "report.jsonl")) ? rowsOf(out).length : 0);
const ended = async (child: ChildProcess) => ((await once(child, "exit")) as [number | null])[0];

describe("batch", () => {
  it("makes the sets asked, each a document, and all anew when others are asked", () => {
    put("one.yaml", good);
    expect(batch("sets", ...quick, "--set", "submittal,owner").status).toBe(0);
    const names = () => readdirSync(join(scratch, "sets/packets/one")).sort();
    expect(names()).toEqual(["one-owner.html", "one.html"]);
    expect(batch("sets", ...quick, "--set", "owner,submittal").stdout).toContain("worked 0, unchanged 1");
    expect(batch("sets", ...quick, "--set", "field").stdout).toContain("worked 1, unchanged 0");
    expect(names()).toEqual(["one-field.html"]);
    expect(batch("sets", ...quick, "--set", "field", "--paper", "tabloid").stdout).toContain("worked 1, unchanged 0");
    expect(batch("sets", ...quick, "--set", "all")).toMatchObject({ status: 2, stderr: expect.stringContaining('"all" is not a set of sheets') });
  });
  it("prices the owner's set by the price book, makes it anew when a price changes, and tells a bad book once", () => {
    put("one.yaml", good);
    const book = join(scratch, "prices.yaml");
    const prices = readFileSync(join(root, "fixtures/prices/demo.yaml"), "utf8");
    const page = () => readFileSync(join(scratch, "priced/packets/one/one-owner.html"), "utf8");
    expect(batch("priced", ...quick, "--set", "owner").status).toBe(0);
    const bare = page();
    writeFileSync(book, prices);
    expect(batch("priced", ...quick, "--set", "owner", "--prices", book).stdout).toContain("worked 1, unchanged 0");
    expect(page()).not.toBe(bare);
    expect(batch("priced", ...quick, "--set", "owner", "--prices", book).stdout).toContain("worked 0, unchanged 1");
    writeFileSync(book, `${prices}# as of today\n`);
    expect(batch("priced", ...quick, "--set", "owner", "--prices", book).stdout).toContain("worked 1, unchanged 0");
    writeFileSync(book, "format: nothing\n");
    const { status, stdout, stderr } = batch("priced", ...quick, "--set", "owner", "--prices", book);
    expect([status, stdout]).toEqual([2, ""]);
    expect(stderr).toMatch(/prices\.yaml:1:\d+: .*\n {4}mend: /);
  });
  it("takes a character that no font draws for bad input, with its place", () => {
    put("boxed.yaml", good.replace(/^( {2}title: ).*$/m, '$1"Outlet \u{13080}"'));
    put("fine.yaml", good);
    const { status } = batch("boxed");
    expect({ status, rows: rowsOf("boxed").map(({ job, outcome }) => [job, outcome]) }).toEqual({
      status: 2,
      rows: [
        ["boxed.yaml", "bad-input"],
        ["fine.yaml", "ready"],
      ],
    });
    expect(rowsOf("boxed")[0]?.says[0]).toMatch(/boxed\.yaml:\d+:\d+: project\.title: no font here draws "\u{13080}" \(U\+13080\).*mend/u);
  });
  it("tells ready, findings, bad input and failed apart; the worst sets the exit code; two of one name keep apart", () => {
    put("a/same.yaml", good);
    put("b/same.yaml", numbered(2));
    expect(batch("ready", ...quick).status).toBe(0);
    put("bad.yaml", fixture("bad-everything"));
    expect(batch("ready", ...quick).status).toBe(1);
    put("broken.yml", "format: nothing");
    put("notes.txt", "not a job");
    const { status, stdout, stderr } = batch("ready", ...quick, "--json");
    expect(status).toBe(2);
    expect(JSON.parse(stdout)).toMatchObject({ jobs: 4, made: 1, unchanged: 3, left: 0, counts: { ready: 2, findings: 1, "bad-input": 1, failed: 0 } });
    expect(stderr).toMatch(/^bad input {2}broken\.yml:1/m);
    expect(rowsOf("ready").map(({ job, outcome }) => [job, outcome])).toEqual([
      ["a/same.yaml", "ready"],
      ["b/same.yaml", "ready"],
      ["bad.yaml", "findings"],
      ["broken.yml", "bad-input"],
    ]);
    const files = contents("ready");
    expect(Object.keys(files)).toEqual(["packets/a/same/same.html", "packets/b/same/same.html", "packets/bad/bad.html", "report.jsonl", "summary.html"]);
    expect(files["packets/a/same/same.html"]).not.toBe(files["packets/b/same/same.html"]);
  });

  it("makes what changed and nothing else: job, overlay, edition, date, a packet that was spoilt or taken away", () => {
    fill(3);
    const made = (...more: string[]) => JSON.parse(batch("out", ...quick, "--json", ...more).stdout).made;
    expect(made()).toBe(3);
    expect(made()).toBe(0);
    put("street-1/job-1.yaml", numbered(77));
    expect(made()).toBe(1);
    expect(made("--edition", "2020")).toBe(3);
    expect(made("--overlay", town)).toBe(3);
    expect(made("--date", "2026-11-26")).toBe(3);
    expect(made("--date", "2026-11-26")).toBe(0);
    appendFileSync(join(scratch, "out/packets/street-2/job-2/job-2.html"), "x");
    rmSync(join(scratch, "out/packets/street-0/job-3/job-3.html"));
    expect(made("--date", "2026-11-26")).toBe(2);
    expect(made("--date", "2026-11-26", "--force")).toBe(3);
    expect(made("--date", "2026-11-26", "--format", "json")).toBe(3);
    expect(Object.keys(contents("out")).filter((name) => name.endsWith(".html"))).toEqual(["summary.html"]);
  });

  it("is silent about progress in a pipe and refuses wrong options and folders with other things in them", () => {
    fill(1);
    expect(batch("out", ...quick).stderr).toBe("");
    mkdirSync(join(scratch, "mine"));
    writeFileSync(join(scratch, "mine/letter.txt"), "dear");
    for (const [out, ...more] of [
      ["mine"],
      ["x", "--jobs", "0"],
      ["x", "--limit", "none"],
      ["x", "--shard", "3/2"],
      ["x", "--overlay", "nowhere.yaml"],
    ] as const) {
      const { status, stderr } = batch(out, ...quick, ...more);
      expect([status, stderr], more.join(" ")).toEqual([2, expect.stringContaining("mend:")]);
    }
    expect(Object.keys(contents("mine"))).toEqual(["letter.txt"]);
    expect(existsSync(join(scratch, "x"))).toBe(false);
  });

  it("without a browser: exit 3, and nothing of a packet", () => {
    fill(1);
    const { status, stderr } = batch("out", "--browser", "/nowhere/browser");
    expect(status).toBe(3);
    expect(stderr).toContain("/nowhere/browser");
    expect(existsSync(join(scratch, "out/packets"))).toBe(false);
  });
});

describe("parts of a batch", () => {
  it("together make every job once, and merge into the report of the whole", () => {
    fill(9);
    expect(batch("whole", ...quick).status).toBe(0);
    for (const part of ["1/3", "2/3", "3/3"]) expect(batch("parts", ...quick, "--shard", part).status).toBe(0);
    const merge = (...reports: string[]) =>
      spawnSync(
        process.execPath,
        [main, "batch-merge", ...reports.map((name) => join(scratch, "parts", name)), "--out", join(scratch, "parts"), "--date", "2026-11-25"],
        {
          encoding: "utf8",
        },
      );
    const lacking = merge("report-1-of-3.jsonl", "report-3-of-3.jsonl");
    expect([lacking.status, lacking.stderr]).toEqual([3, "part 2 of 3 has no report here\n"]);
    expect(merge("report-1-of-3.jsonl", "report-2-of-3.jsonl", "report-3-of-3.jsonl").status).toBe(0);
    const [whole, parts] = [contents("whole"), contents("parts")];
    for (const name of Object.keys(whole)) expect(parts[name], name).toBe(whole[name]);
  });

  const parallel = spawnSync("parallel", ["--version"], { encoding: "utf8" });
  it.skipIf(parallel.error !== undefined || !parallel.stdout.includes("GNU"))("under GNU parallel (skipped where it is not installed)", () => {
    fill(8);
    const { status } = spawnSync("parallel", ["-j2", process.execPath, ...args("parts", ...quick), "--shard", "{}/4", ":::", "1", "2", "3", "4"], {
      encoding: "utf8",
    });
    expect(status).toBe(0);
    const all = [1, 2, 3, 4].flatMap((part) => rowsOf("parts", `report-${part}-of-4.jsonl`));
    expect(all.map(({ job }) => job).sort()).toEqual(Array.from({ length: 8 }, (_, i) => `street-${(i + 1) % 3}/job-${i + 1}.yaml`).sort());
  });

  it("merging says when a run did not come to its end", () => {
    fill(2);
    batch("out", ...quick);
    const path = join(scratch, "out/report.jsonl");
    writeFileSync(path, readFileSync(path, "utf8").split("\n").slice(0, 1).join("\n"));
    const { status, stderr } = spawnSync(process.execPath, [main, "batch-merge", path, "--out", join(scratch, "merged")], { encoding: "utf8" });
    expect(status).toBe(3);
    expect(stderr).toContain("did not come to its end");
    expect(rowsOf("merged")).toHaveLength(1);
    expect(readFileSync(join(scratch, "merged/summary.html"), "utf8")).toContain('href="./../out/packets/');
  });
});

describe.runIf(process.platform !== "win32")("a batch that is ended", { timeout: 180_000 }, () => {
  it("goes on after kill -9 where it was, to the bytes of a run nobody disturbed; PDF", async () => {
    fill(6);
    expect(batch("calm").status).toBe(0);
    const calm = contents("calm");
    for (const rows of [1, 3]) {
      const run = begin("hurt");
      await until(() => madeSoFar("hurt") >= rows);
      run.kill("SIGKILL");
      await ended(run);
      // What has its name is whole.
      for (const [name, bytes] of Object.entries(contents("hurt")))
        if (name.endsWith(".pdf") && !name.includes("/.")) expect(bytes === calm[name], name).toBe(true);
    }
    const { status, stdout } = batch("hurt", "--json");
    expect(status).toBe(0);
    expect(JSON.parse(stdout).unchanged).toBeGreaterThanOrEqual(3);
    const hurt = contents("hurt");
    expect(Object.keys(hurt)).toEqual(Object.keys(calm));
    for (const name of Object.keys(calm)) expect(hurt[name] === calm[name], name).toBe(true);
  });

  it.each([
    ["SIGINT", 1],
    ["SIGTERM", 1],
    ["SIGINT", 2],
  ] as const)("%s, %i times: report written, no half file, exit 130, and the next run goes on", async (signal, times) => {
    fill(8);
    const run = begin("out");
    await until(() => madeSoFar("out") >= 1);
    for (let i = 0; i < times; i += 1) {
      run.kill(signal);
      await sleep(20);
    }
    expect(await ended(run)).toBe(130);
    const rows = rowsOf("out");
    expect(rows.length).toBeGreaterThan(0);
    expect(rows.length).toBeLessThan(8);
    const files = contents("out");
    expect(Object.keys(files).filter((name) => /(^|\/)\./.test(name))).toEqual([]);
    expect(files["summary.html"]).toContain("Not finished");
    expect(JSON.parse(files["report.jsonl"]?.trim().split("\n").at(-1) ?? "")).toEqual({ format: "branchwork-batch-end/1", jobs: 8, done: rows.length });
    for (const { folder, files: named } of rows) for (const { name, bytes } of named) expect(files[`${folder}/${name}`]).toHaveLength(bytes);
    expect(JSON.parse(batch("out", "--json").stdout)).toMatchObject({ unchanged: rows.length, made: 8 - rows.length, left: 0 });
  });

  it("a second run into the same folder is refused while the first lives", async () => {
    fill(40); // so many that the first is at work when the second looks, however slowly it starts
    const run = begin("out");
    await until(() => madeSoFar("out") >= 1);
    const { status, stderr } = batch("out");
    expect([status, stderr]).toEqual([3, expect.stringContaining("another run")]);
    run.kill("SIGINT");
    expect(await ended(run)).toBe(130);
  });
});
