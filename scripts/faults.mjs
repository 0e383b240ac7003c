// Harms batches of packets in every way a machine does and counts what was lost: kill -9 at random moments, a full disk, an output
// that cannot be written, a killed browser, SIGINT twice, a clock that jumps, a killed queue, 10,000 files, links in circles.
// Ends with 1 when anything was lost.
// node scripts/faults.mjs [--kills N] [--jobs N] [--seed N]; N kills is 20 unless told, 200 at night.
import { spawn, spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { once } from "node:events";
import { chmodSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, utimesSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, relative } from "node:path";
import { performance } from "node:perf_hooks";
import { setTimeout as sleep } from "node:timers/promises";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { killQueue } from "./faults/kill-queue.mjs";

const root = dirname(dirname(fileURLToPath(import.meta.url)));
const main = join(root, "apps/packet/dist/main.js");
const { values } = parseArgs({
  options: { kills: { type: "string", default: "20" }, jobs: { type: "string", default: "12" }, seed: { type: "string", default: "1" } },
});
const [kills, howMany, seed] = [values.kills, values.jobs, values.seed].map(Number);
if (![kills, howMany, seed].every((value) => Number.isInteger(value) && value >= 0) || howMany < 2) {
  console.error("faults: --kills, --jobs (2 or more) and --seed are whole numbers");
  process.exit(2);
}
if (process.platform !== "linux" || !existsSync(main)) {
  console.error(process.platform === "linux" ? "faults: nothing is built; run `pnpm build` first" : "faults: runs on Linux only");
  process.exit(3);
}

let state = seed;
/** From 0 to 1, the same for the same seed. */
function random() {
  state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
  return state / 2 ** 32;
}

const top = mkdtempSync(join(tmpdir(), "branchwork-faults-"));
process.on("exit", () => rmSync(top, { recursive: true, force: true }));
const fixture = readFileSync(join(root, "fixtures/jobs/rv-30-small-service.yaml"), "utf8");
const jobs = join(top, "jobs");
for (let n = 1; n <= howMany; n += 1) {
  mkdirSync(join(jobs, `street-${n % 3}`), { recursive: true });
  writeFileSync(join(jobs, `street-${n % 3}`, `job-${n}.yaml`), fixture.replace(/^( {2}title: ).*$/m, `$1Job ${n}`));
}

const argsOf = (out, ...more) => [main, "batch", jobs, "--out", out, "--date", "2026-01-01", "--json", ...more];
const begin = (out, env = {}, ...more) => spawn(process.execPath, argsOf(out, ...more), { stdio: ["ignore", "pipe", "pipe"], env: { ...process.env, ...env } });
const run = (out, ...more) => spawnSync(process.execPath, argsOf(out, ...more), { encoding: "utf8" });
const sha256 = (path) => createHash("sha256").update(readFileSync(path)).digest("hex");

/** Content digests of the files below a folder that have their name; those under temporary names apart. */
function contents(folder) {
  const named = new Map();
  const temporary = [];
  for (const entry of existsSync(folder) ? readdirSync(folder, { recursive: true, withFileTypes: true }) : []) {
    if (!entry.isFile()) continue;
    const path = join(entry.parentPath, entry.name);
    if (entry.name.startsWith(".")) temporary.push(relative(folder, path));
    else named.set(relative(folder, path), sha256(path));
  }
  return { named, temporary };
}

const results = [];
const count = (fault, tried, { lost = 0, corrupt = 0, wrong = [] }, note = "") => {
  results.push({ lost, corrupt, wrong: wrong.length });
  console.log(`${fault.padEnd(48)} tried ${String(tried).padStart(4)}   lost ${lost}   corrupt ${corrupt}${note ? `   ${note}` : ""}`);
  for (const line of wrong) console.log(`    wrong: ${line}`);
};

const started = performance.now();
const calmFolder = join(top, "calm");
if (run(calmFolder).status !== 0) {
  console.error("faults: the undisturbed run did not make every packet");
  process.exit(3);
}
const calmMs = performance.now() - started;
const calm = contents(calmFolder).named;
const isPacket = (name) => name.startsWith("packets/");

/** Named packets that are not what they must be. */
const corruptIn = (folder) => [...contents(folder).named].filter(([name, sum]) => isPacket(name) && calm.get(name) !== sum).length;
/** What an undisturbed run has and this folder, brought to its end, has not or has otherwise; and what it has besides. */
function compare(folder, status) {
  const { named, temporary } = contents(folder);
  const lost = [...calm.keys()].filter((name) => !named.has(name)).length;
  const corrupt = [...named].filter(([name, sum]) => calm.get(name) !== sum).length;
  const wrong = [...(status === 0 ? [] : [`the run brought to its end has exit code ${status}`]), ...temporary.map((name) => `left behind: ${name}`)];
  return { lost, corrupt, wrong };
}
const add = (a, b) => ({ lost: a.lost + (b.lost ?? 0), corrupt: a.corrupt + (b.corrupt ?? 0), wrong: [...a.wrong, ...(b.wrong ?? [])] });
const none = { lost: 0, corrupt: 0, wrong: [] };

async function killAtRandom() {
  let sum = none;
  let hit = 0;
  let folder;
  for (let n = 0; n < kills; n += 1) {
    folder ??= join(top, `killed-${n}`);
    const child = begin(folder);
    const gone = once(child, "exit");
    await Promise.race([gone, sleep(300 + random() * calmMs)]);
    if (child.exitCode === null && child.signalCode === null) {
      child.kill("SIGKILL");
      hit += 1;
    }
    await gone;
    sum = add(sum, { corrupt: corruptIn(folder) });
    // Every third time, and at the end, the run is brought to its end; in between it is killed again.
    if (n % 3 === 2 || n === kills - 1) {
      sum = add(sum, compare(folder, run(folder).status));
      rmSync(folder, { recursive: true });
      folder = undefined;
    }
  }
  count("kill -9 at a random moment, then gone on", kills, sum, `${hit} while at work`);
}

/** Processes below one. */
function below(pid) {
  const children = readdirSync("/proc")
    .filter((name) => /^\d+$/.test(name))
    .filter((name) => {
      try {
        const stat = readFileSync(`/proc/${name}/stat`, "utf8");
        return Number(stat.slice(stat.lastIndexOf(")") + 2).split(" ")[1]) === pid;
      } catch {
        return false; // ended meanwhile
      }
    })
    .map(Number);
  return children.flatMap((child) => [child, ...below(child)]);
}

async function killBrowser(signal, note) {
  const folder = join(top, `browser-${signal}`);
  const child = begin(folder, {}, "--limit", "8");
  const gone = once(child, "exit");
  let said = "";
  child.stderr.on("data", (piece) => {
    said += piece;
  });
  let hit = 0;
  for (let i = 0; i < 3 && child.exitCode === null; i += 1) {
    await Promise.race([gone, sleep(calmMs * (0.3 + 0.3 * random()))]);
    const [browser] = child.exitCode === null ? below(child.pid) : [];
    if (browser === undefined) continue;
    try {
      process.kill(browser, signal);
      hit += 1;
    } catch {}
  }
  const [status] = await gone;
  // A packet whose browser was taken twice is reported as failed, and made by the next run.
  const wrong = [0, 3].includes(status) ? [] : [`exit code ${status}: ${said}`];
  count(note, hit, add(add(none, { corrupt: corruptIn(folder), wrong }), compare(folder, run(folder).status)), `exit code ${status} at first`);
}

async function interruptTwice(times) {
  const folder = join(top, `interrupted-${times}`);
  const child = begin(folder);
  const gone = once(child, "exit");
  const report = join(folder, "report.jsonl");
  while (child.exitCode === null && !(existsSync(report) && readFileSync(report, "utf8").includes("\n"))) await sleep(10);
  for (let i = 0; i < times; i += 1) {
    child.kill("SIGINT");
    await sleep(30);
  }
  const [status] = await gone;
  const wrong = [...([0, 130].includes(status) ? [] : [`exit code ${status}`]), ...contents(folder).temporary.map((name) => `left behind: ${name}`)];
  count(
    `SIGINT ${times === 1 ? "once" : "twice"}, then gone on`,
    1,
    add(add(none, { corrupt: corruptIn(folder), wrong }), compare(folder, run(folder).status)),
    `exit code ${status} at first`,
  );
}

/** A disk of its own, as small as told; undefined where this user cannot have one. */
function smallDisk(size) {
  const disk = join(top, "disk");
  mkdirSync(disk, { recursive: true });
  return spawnSync("mount", ["-t", "tmpfs", "-o", `size=${size}`, "tmpfs", disk]).status === 0 ? disk : undefined;
}

function fullDisk() {
  const packetBytes = readFileSync(join(calmFolder, [...calm.keys()].find((name) => name.endsWith(".pdf")) ?? "")).length;
  const disk = smallDisk(Math.ceil(packetBytes * 2.5));
  if (disk === undefined) {
    console.log(`${"full disk".padEnd(48)} skipped: this user cannot mount a small one`);
    return;
  }
  try {
    const folder = join(disk, "out");
    const { status } = run(folder);
    const first = { corrupt: corruptIn(folder), wrong: status === 3 ? [] : [`exit code ${status} on a full disk`] };
    spawnSync("mount", ["-o", "remount,size=1g", disk]);
    count("full disk, then enlarged and gone on", 1, add(add(none, first), compare(folder, run(folder).status)), `exit code ${status} at first`);
  } finally {
    spawnSync("umount", [disk]);
  }
}

function readOnly() {
  const folder = join(top, "read-only");
  mkdirSync(folder);
  const asRoot = process.getuid?.() === 0;
  // Root writes past permissions: there a read-only mount stands for them.
  if (asRoot && spawnSync("mount", ["-t", "tmpfs", "-o", "ro", "tmpfs", folder]).status !== 0) {
    console.log(`${"read-only output".padEnd(48)} skipped: this user cannot mount`);
    return;
  }
  if (!asRoot) chmodSync(folder, 0o555);
  const { status, stderr } = run(folder);
  const wrong = status === 3 && stderr.includes("mend:") ? [] : [`exit code ${status}: ${stderr}`];
  count("read-only output", 1, { ...none, wrong });
  if (asRoot) spawnSync("umount", [folder]);
  else chmodSync(folder, 0o755);
}

/** The program's wall clock set back and forth by up to ten years at every look; the times of files with it. */
function clockJumps() {
  const folder = join(top, "clock");
  const shim = join(top, "clock.mjs");
  writeFileSync(
    shim,
    `const real = globalThis.Date;
     let state = ${seed} || 1;
     const shift = () => { state = (Math.imul(state, 1664525) + 1013904223) >>> 0; return (state / 2 ** 32 - 0.5) * 20 * 365 * 86_400_000; };
     globalThis.Date = class extends real {
       constructor(...given) { given.length === 0 ? super(real.now() + shift()) : super(...given); }
       static now() { return Math.round(real.now() + shift()); }
     };`,
  );
  const jumping = () => spawnSync(process.execPath, ["--import", shim, ...argsOf(folder)], { encoding: "utf8" });
  const first = jumping();
  let sum = add(compare(folder, first.status), { corrupt: corruptIn(folder) });
  let at = 0;
  for (const entry of [jobs, folder].flatMap((one) => readdirSync(one, { recursive: true, withFileTypes: true }))) {
    at += 1;
    utimesSync(join(entry.parentPath, entry.name), at % 2 ? 1 : 4_070_908_800, at % 2 ? 1 : 4_070_908_800);
  }
  const { status, stdout } = jumping();
  const { made, unchanged } = JSON.parse(stdout || "{}");
  sum = add(sum, { ...compare(folder, status), wrong: made === 0 && unchanged === howMany ? [] : [`${made} made again though nothing but times had changed`] });
  count("clock set back and forth, files of 1970 and 2099", 2, sum);
}

async function manyFiles() {
  const { findJobs } = await import(join(root, "apps/packet/dist/batch/find-jobs.js"));
  const many = join(top, "many");
  for (let folder = 0; folder < 100; folder += 1) {
    mkdirSync(join(many, `${folder}`), { recursive: true });
    for (let n = 0; n < 100; n += 1) writeFileSync(join(many, `${folder}`, `${n}.yaml`), "x: 1\n");
    symlinkSync("..", join(many, `${folder}`, "up"));
    symlinkSync(many, join(many, `${folder}`, "all"));
    symlinkSync(`self-${folder}`, join(many, `self-${folder}`));
  }
  const start = performance.now();
  const found = await findJobs([many], []);
  const listed = performance.now() - start;
  count("10,000 files among 300 links in circles", 1, { ...none, lost: 10_000 - found.length }, `listed in ${Math.round(listed)} ms`);
  const out = join(top, "many-out");
  const whole = performance.now();
  const { status } = spawnSync(process.execPath, [main, "batch", many, "--out", out, "--format", "html", "--date", "2026-01-01"], { encoding: "utf8" });
  const seconds = ((performance.now() - whole) / 1000).toFixed(1);
  const rows = readFileSync(join(out, "report.jsonl"), "utf8")
    .split("\n")
    .filter((line) => line.includes('"outcome":"bad-input"')).length;
  count("10,000 files that are no jobs, all told", 1, { lost: 10_000 - rows, corrupt: 0, wrong: status === 2 ? [] : [`exit code ${status}`] }, `${seconds} s`);
}

console.log(`undisturbed: ${howMany} packets in ${(calmMs / 1000).toFixed(1)} s; seed ${seed}`);
await killAtRandom();
await killBrowser("SIGKILL", "browser killed, again and again");
await killBrowser("SIGSTOP", "browser stopped, again and again");
await interruptTwice(1);
await interruptTwice(2);
fullDisk();
readOnly();
clockJumps();
const queued = await killQueue({ main, jobs, top, calm, calmMs, random, sha256 });
if (queued === null) console.log(`${"queue and workers killed".padEnd(48)} skipped: there is no redis-server`);
else count("queue and workers killed, then gone on", queued.hits, queued);
await manyFiles();
const total = results.reduce((sum, one) => ({ lost: sum.lost + one.lost, corrupt: sum.corrupt + one.corrupt, wrong: sum.wrong + one.wrong }), {
  lost: 0,
  corrupt: 0,
  wrong: 0,
});
console.log(`lost ${total.lost}, corrupt ${total.corrupt}, otherwise wrong ${total.wrong}; ${Math.round((performance.now() - started) / 1000)} s`);
process.exitCode = Object.values(total).some((number) => number > 0) ? 1 : 0;
