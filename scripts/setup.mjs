// One file, no dependencies: fetches the pinned pnpm, installs, builds, then runs the demo or every test.
import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const root = dirname(dirname(fileURLToPath(import.meta.url)));
const packages = ["packages/engine", "packages/sheets", "apps/packet"];
const pin = JSON.parse(readFileSync(join(root, "package.json"), "utf8")).packageManager;
const env = { ...process.env, TURBO_TELEMETRY_DISABLED: "1", DO_NOT_TRACK: "1", npm_config_yes: "true" };

const [major = 0, minor = 0] = process.versions.node.split(".").map(Number);
if (major < 20 || (major === 20 && minor < 19)) stop(`Node ${process.versions.node} is too old: install Node 20.19 or newer`, 3);

function stop(message, code) {
  console.error(`setup: ${message}`);
  process.exit(code);
}

function run(what, command, args, options = {}) {
  console.log(`\n── ${what}`);
  const { status, error } = spawnSync(command, args, { cwd: root, env, stdio: "inherit", ...options });
  if (error) stop(`${what}: ${command} did not start: ${error.message}`, 3);
  return status ?? 1;
}

function must(what, command, args) {
  const status = run(what, command, args);
  if (status !== 0) stop(`${what} failed (exit ${status}); what went wrong is printed above`, status);
}

const pnpm = (what, ...args) => must(what, "npx", ["-y", pin, ...args]);

function prepare() {
  pnpm("install (frozen lockfile)", "install", "--frozen-lockfile", "--config.confirm-modules-purge=false");
  pnpm("build", "exec", "turbo", "run", "build", "--no-daemon", "--output-logs=errors-only");
}

function demo() {
  prepare();
  const args = ["apps/packet/dist/main.js", "build", "fixtures/jobs/rv-50-carport.yaml", "--overlay", "fixtures/overlays/tamarack-hollow.yaml", "--out", "out/demo", "--date", "2026-11-25", "--force"];
  must("demo packet", process.execPath, args);
  console.log("\nThe demo packet is in out/demo");
}

function test() {
  prepare();
  pnpm("lint", "exec", "biome", "check", ".");
  let passed = 0;
  let failed = 0;
  let broken = false;
  const reports = mkdtempSync(join(tmpdir(), "branchwork-tests-"));
  for (const folder of packages) {
    const report = join(reports, `${folder.replace("/", "-")}.json`);
    const status = run(`tests of ${folder}`, "npx", ["-y", pin, "-C", folder, "exec", "vitest", "run", "--reporter=default", "--reporter=json", `--outputFile.json=${report}`]);
    if (!existsSync(report)) stop(`tests of ${folder} wrote no report`, 1);
    const counts = JSON.parse(readFileSync(report, "utf8"));
    passed += counts.numPassedTests;
    failed += counts.numFailedTests;
    broken ||= status !== 0;
  }
  rmSync(reports, { recursive: true });
  console.log(`\n${passed} passed, ${failed} failed`);
  process.exit(broken || failed > 0 || passed === 0 ? 1 : 0);
}

const tasks = { demo, test };
const task = tasks[process.argv[2] ?? ""];
if (!task) stop(`say which: ${Object.keys(tasks).join(" or ")}`, 2);
task();
