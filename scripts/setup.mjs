// From a fresh clone with Node and npm alone: fetches the pinned pnpm, installs, builds, then prints the demo packet, runs every test, or stops there.
import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { delimiter, dirname, join, relative } from "node:path";
import { fileURLToPath } from "node:url";

const root = dirname(dirname(fileURLToPath(import.meta.url)));
const windows = process.platform === "win32";
// NODE_ENV=production would leave out the development packages that building and testing need.
const env = { ...process.env, NODE_ENV: "", TURBO_TELEMETRY_DISABLED: "1", DO_NOT_TRACK: "1", CI: process.env.CI ?? "true" };
const environmentProblem = 3;

const demoJob = "fixtures/jobs/rv-50-carport.yaml";
const demoOverlay = "fixtures/overlays/tamarack-hollow.yaml";
const demoOut = "out/demo";

/** Ends with a message that says what is wrong and what to do. */
function stop(message, code) {
  console.error(`\nsetup: ${message}`);
  process.exit(code);
}

/** Runs a program in the root folder and returns its exit code. */
function run(what, command, args, options = {}) {
  console.log(`\n── ${what}`);
  const { status, signal, error } = spawnSync(command, args, { cwd: root, env, stdio: ["ignore", "inherit", "inherit"], ...options });
  if (error) stop(`${what}: ${command} did not start (${error.message})`, environmentProblem);
  if (signal) stop(`${what}: ended by ${signal}`, 130);
  return status;
}

const node = (what, args, options) => run(what, process.execPath, args, options);

function pnpm(what, ...args) {
  // turbo starts the packages' scripts through pnpm, so pnpm has to be on the path: npx puts it there.
  return run(what, "npx", ["--yes", json("package.json").packageManager, ...args], { shell: windows });
}

const json = (path) => JSON.parse(readFileSync(join(root, path), "utf8"));

/** Folders of the workspace, in the order of pnpm-workspace.yaml. */
function workspace() {
  return ["packages", "apps"].flatMap((folder) =>
    readdirSync(join(root, folder))
      .map((name) => `${folder}/${name}`)
      .filter((path) => existsSync(join(root, path, "package.json"))),
  );
}

function checkNode() {
  const [major, minor] = process.versions.node.split(".").map(Number);
  if (major < 20 || (major === 20 && minor < 19)) stop(`Node ${process.versions.node} is too old; install Node 20.19 or newer`, environmentProblem);
}

function install() {
  const manifests = ["package.json", "pnpm-workspace.yaml", "pnpm-lock.yaml", ...workspace().map((path) => `${path}/package.json`)];
  const hash = createHash("sha256").update(process.version).update(root);
  for (const path of manifests) hash.update(path).update(readFileSync(join(root, path)));
  const state = hash.digest("hex");
  const stamp = join(root, "node_modules", ".branchwork-installed");
  if (existsSync(stamp) && readFileSync(stamp, "utf8") === state) return;
  const status = pnpm("install the pinned packages", "install", "--frozen-lockfile");
  if (status !== 0) stop("the install failed; the first one needs the package registry that npm is set up for (npm config get registry)", environmentProblem);
  writeFileSync(stamp, state);
}

function turbo(what, ...tasks) {
  return pnpm(what, "exec", "turbo", "run", ...tasks, "--output-logs=errors-only", "--ui=stream");
}

function build() {
  install();
  if (turbo("build", "build") !== 0) stop("the build failed; the compiler's messages are above", 1);
}

function demo() {
  build();
  const args = [
    "apps/packet/dist/main.js",
    "build",
    demoJob,
    "--overlay",
    demoOverlay,
    "--out",
    demoOut,
    "--format",
    "pdf,html,json,svg",
    "--force",
    "--set",
    "submittal,field,owner",
    "--prices",
    "fixtures/prices/demo.yaml",
  ];
  const status = node(`packet for ${demoJob}`, args);
  if (status !== 0) stop(`the packet was not made (exit code ${status}); the reason is above`, status);
  console.log(`\nThe packet is in ${demoOut}; its files are listed above. Open ${demoOut}/rv-50-carport.pdf`);
}

/** Runs one package's tests; a test file that does not load counts as one failure. */
function testPackage(folder, reports) {
  const report = join(reports, `${folder.replaceAll("/", "-")}.json`);
  const vitest = relative(join(root, folder), join(root, "node_modules", "vitest", "vitest.mjs"));
  const status = node(`tests of ${folder}`, [vitest, "run", "--reporter=default", "--reporter=json", `--outputFile.json=${report}`], {
    cwd: join(root, folder),
  });
  if (!existsSync(report)) return { passed: 0, failed: 1, skipped: 0 };
  const { numPassedTests, numFailedTests, numPendingTests, testResults } = JSON.parse(readFileSync(report, "utf8"));
  const unloaded = testResults.filter((file) => file.status === "failed" && !file.assertionResults.some((test) => test.status === "failed")).length;
  const failed = numFailedTests + unloaded;
  return { passed: numPassedTests, failed: status !== 0 && failed === 0 ? 1 : failed, skipped: numPendingTests };
}

/** Programs some tests compare ours with. Fetched where that is ours to do (Debian, as root); without them those tests say they are skipped. */
const comparers = ["ngspice", "qpdf", "redis-server", "parallel"];

function fetchComparers() {
  const onPath = (program) => process.env.PATH?.split(delimiter).some((folder) => existsSync(join(folder, program)));
  const lacking = comparers.filter((program) => !onPath(program));
  if (lacking.length === 0 || process.platform !== "linux" || process.getuid?.() !== 0 || !onPath("apt-get")) return;
  console.log(`\n── programs for comparison: ${lacking.join(", ")}`);
  const apt = (...args) =>
    spawnSync("apt-get", args, { env: { ...env, DEBIAN_FRONTEND: "noninteractive", RUNLEVEL: "1" }, stdio: "ignore", timeout: 180_000 }).status === 0;
  const got = apt("update") && apt("install", "-y", "--no-install-recommends", ...lacking);
  if (!got) console.log("not fetched; the tests that want them are skipped");
}

function test() {
  install();
  fetchComparers();
  const broken = [];
  if (node("lint", ["node_modules/@biomejs/biome/bin/biome", "check", "."]) !== 0) broken.push("lint");
  if (turbo("typecheck and build", "typecheck", "build", "--continue") !== 0) broken.push("typecheck or build");
  const total = { passed: 0, failed: 0, skipped: 0 };
  const reports = mkdtempSync(join(tmpdir(), "branchwork-tests-"));
  try {
    for (const folder of workspace()) {
      const counts = testPackage(folder, reports);
      for (const key of Object.keys(total)) total[key] += counts[key];
    }
  } finally {
    rmSync(reports, { recursive: true, force: true });
  }
  if (node("the packages as a stranger has them", ["scripts/pack-check.mjs"]) !== 0) broken.push("pack-check");
  console.log("");
  if (total.skipped > 0) console.log(`${total.skipped} skipped on this machine`);
  if (total.passed === 0) broken.push("no test passed");
  if (broken.length > 0) console.log(`not in order: ${broken.join(", ")}`);
  console.log(`${total.passed} passed, ${total.failed} failed`);
  process.exitCode = broken.length > 0 || total.failed > 0 ? 1 : 0;
}

const tasks = { build, demo, test };
const task = tasks[process.argv[2]];
if (!task) stop(`say what to do: ${Object.keys(tasks).join(" or ")}`, 2);
checkNode();
task();
