// The long tests: every test that takes a number of random cases, with many; then the whole of the hostile-input tests. BRANCHWORK_CASES tells how many.
import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const root = dirname(dirname(fileURLToPath(import.meta.url)));
// biome-ignore lint/suspicious/noUndeclaredEnvVars: no cached task runs this
const cases = process.env.BRANCHWORK_CASES ?? "10000";
if (!/^[1-9]\d{0,6}$/.test(cases)) {
  console.error(`nightly: BRANCHWORK_CASES is "${cases}"; give a whole number of cases`);
  process.exit(2);
}
const vitest = join(root, "node_modules/vitest/vitest.mjs");
if (!existsSync(vitest) || !existsSync(join(root, "apps/packet/dist/main.js"))) {
  console.error("nightly: install and build first (npm test does both)");
  process.exit(3);
}
const parts = [
  { folder: "packages/engine", files: ["test/any-job", "test/properties", "test/hostile-fuzz", "test/hostile-text"] },
  {
    folder: "apps/packet",
    files: ["test/hostile-overlay", "test/hostile-injection", "test/hostile-files", "test/hostile-sealed", "test/hostile-serve", "test/every-set"],
  },
];
let broken = 0;
for (const { folder, files } of parts) {
  console.log(`\n── ${folder}, ${cases} cases`);
  const env = { ...process.env, BRANCHWORK_CASES: cases, BRANCHWORK_RUNS: cases, BRANCHWORK_EVERY: "1" };
  // A property of many cases outlasts the limit of an ordinary test: a second for every three cases, and ten minutes.
  const limit = String(600_000 + Number(cases) * 350);
  const { status } = spawnSync(process.execPath, [vitest, "run", ...files, `--testTimeout=${limit}`], {
    cwd: join(root, folder),
    env,
    stdio: ["ignore", "inherit", "inherit"],
  });
  if (status !== 0) broken += 1;
}
process.exitCode = broken > 0 ? 1 : 0;
