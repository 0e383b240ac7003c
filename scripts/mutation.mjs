// Mutation testing of the engine's rules: small faults are put into the code one by one, and a test must notice each.
//   node scripts/mutation.mjs                          all of sizing, service and basis (two to three hours on two cores)
//   node scripts/mutation.mjs src/sizing/burial.ts …   some files
//   node scripts/mutation.mjs --working-tree …         what is edited here and not yet committed too
// It works in a clone of HEAD, in place there, so that nothing here is touched; the tool is fetched into that clone alone.
import { execFileSync, spawnSync } from "node:child_process";
import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";

const root = dirname(dirname(fileURLToPath(import.meta.url)));
const { packageManager } = JSON.parse(readFileSync(join(root, "package.json"), "utf8"));
// Version 9 is the last that runs on Node 20.
const tool = ["@stryker-mutator/core@9.6.1", "@stryker-mutator/vitest-runner@9.6.1"];
const { values, positionals: files } = parseArgs({ options: { "working-tree": { type: "boolean", default: false } }, allowPositionals: true });
const clone = mkdtempSync(join(tmpdir(), "branchwork-mutation-"));
const engine = join(clone, "packages/engine");

function run(command, args, cwd) {
  const { status, error } = spawnSync(command, args, { cwd, stdio: "inherit" });
  if (error || status !== 0) throw new Error(`${command} ${args.join(" ")}: ${error?.message ?? `exit code ${status}`}`);
}

/** Brings a clone of HEAD to what stands here: files edited, added and taken out, without what git ignores. */
function bringUncommitted() {
  const listed = (...args) =>
    execFileSync("git", ["ls-files", "-z", ...args], { cwd: root, encoding: "utf8" })
      .split("\0")
      .filter(Boolean);
  for (const name of listed("--modified", "--others", "--exclude-standard")) if (existsSync(join(root, name))) cpSync(join(root, name), join(clone, name));
  for (const name of listed("--deleted")) rmSync(join(clone, name), { force: true });
}

try {
  run("git", ["clone", "--quiet", root, clone], root);
  if (values["working-tree"]) bringUncommitted();
  run("npx", ["--yes", packageManager, "install", "--frozen-lockfile", "--prefer-offline"], clone);
  run("npx", ["--yes", packageManager, "add", "--save-dev", "--workspace-root", ...tool], clone);
  run("npx", ["stryker", "run", "stryker.config.json", ...(files.length > 0 ? ["--mutate", files.join(",")] : [])], engine);
} finally {
  const report = join(clone, "out/mutation/report.json");
  if (existsSync(report)) cpSync(report, join(root, "out/mutation/report.json"));
  rmSync(clone, { recursive: true, force: true });
}
