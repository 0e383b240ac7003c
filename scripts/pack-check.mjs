// Packs engine and sheets as they would be published, lints the packages, installs them into an empty folder, uses them as a stranger would, and measures what they add to a web page.
import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { gzipSync } from "node:zlib";

const root = dirname(dirname(fileURLToPath(import.meta.url)));
const windows = process.platform === "win32";
const scratch = mkdtempSync(join(tmpdir(), "branchwork-pack-"));
const stranger = join(scratch, "stranger");
/** Gzipped kilobytes (1,000 bytes) of one bundle, minified, for a browser. Stated in packages/engine/README.md. */
const CEILINGS = [
  { name: "one function (boxVolume)", kB: 20, code: 'export { boxVolume } from "@branchwork/engine";' },
  {
    name: "one calculation with its schema (box-volume)",
    kB: 50,
    code: 'export { boxVolumeCalculation } from "@branchwork/engine/calculations/box-volume";',
  },
  { name: "design", kB: 130, code: 'export { design } from "@branchwork/engine";' },
  { name: "readJob and design", kB: 200, code: 'export { readJob, design } from "@branchwork/engine";' },
];

const failures = [];
const check = (what, good, detail = "") => {
  console.log(`${good ? "ok  " : "FAIL"}  ${what}`);
  if (!good) failures.push(`${what}\n${detail}`);
};

function run(command, args, cwd, options = {}) {
  const { status, stdout, stderr, error } = spawnSync(command, args, { cwd, encoding: "utf8", shell: windows && command !== process.execPath, ...options });
  if (error) throw error;
  return { good: status === 0, said: `${stdout}${stderr}`, stdout };
}

const node = (args, cwd, options) => run(process.execPath, args, cwd, options);
const manifestOf = (folder) => JSON.parse(readFileSync(join(root, "packages", folder, "package.json"), "utf8"));
const bin = (name) => {
  const folder = join(root, "node_modules", name);
  const { bin: bins } = JSON.parse(readFileSync(join(folder, "package.json"), "utf8"));
  return join(folder, typeof bins === "string" ? bins : Object.values(bins)[0]);
};

/** npm keeps pnpm's `workspace:` as it stands, which no stranger can install; the packed copy names the version, as publishing does. */
function pack(folder) {
  const copy = join(scratch, folder);
  const { good, said } = run("npm", ["pack", "--pack-destination", scratch, "--silent"], join(root, "packages", folder));
  check(`${folder} packs`, good, said);
  const tarball = readdirSync(scratch).find((name) => name.startsWith(`branchwork-${folder}-`) && name.endsWith(".tgz"));
  mkdirSync(copy);
  run("tar", ["-xzf", join(scratch, tarball), "-C", copy], scratch);
  const at = join(copy, "package", "package.json");
  const manifest = JSON.parse(readFileSync(at, "utf8"));
  for (const [name, range] of Object.entries(manifest.dependencies ?? {}))
    if (range.startsWith("workspace:")) manifest.dependencies[name] = `${range.slice("workspace:".length)}${manifestOf(name.split("/")[1]).version}`;
  writeFileSync(at, `${JSON.stringify(manifest, null, 2)}\n`);
  rmSync(join(scratch, tarball));
  const again = run("npm", ["pack", "--pack-destination", scratch, "--silent"], join(copy, "package"));
  check(`${folder} packs with its versions written out`, again.good, again.said);
  return join(scratch, tarball);
}

function lint(folder, tarball) {
  const publint = node([bin("publint"), "run", tarball, "--strict"], root);
  check(`publint: ${folder}`, publint.good, publint.said);
  const attw = node([bin("@arethetypeswrong/cli"), tarball, "--profile", "esm-only", "--no-emoji", "--format", "ascii"], root);
  check(`attw: ${folder}`, attw.good, attw.said);
}

const PLAIN = `
import assert from "node:assert/strict";
import { boxVolume, design, readJob } from "@branchwork/engine";
import { CALCULATIONS, calculate, calculationOf } from "@branchwork/engine/calculations";
import { boxVolumeCalculation } from "@branchwork/engine/calculations/box-volume";
import * as sheets from "@branchwork/sheets";
import { readFileSync } from "node:fs";
const read = readJob(readFileSync(process.argv[2], "utf8"));
assert.ok(read.ok, JSON.stringify(read.issues));
assert.equal(typeof design, "function");
assert.equal(boxVolume({ ...boxVolumeCalculation.example, id: "box" }).unit, "in3");
for (const each of CALCULATIONS) assert.ok(calculate(each, each.example).ok, each.name);
assert.equal(calculationOf("box-volume"), boxVolumeCalculation);
assert.ok(Object.keys(sheets).length > 0);
`;

const TYPED = `
import { boxVolume, type BoxContents, printCitation, type Worked } from "@branchwork/engine";
import { calculate } from "@branchwork/engine/calculations";
import { boxVolumeCalculation } from "@branchwork/engine/calculations/box-volume";
import * as sheets from "@branchwork/sheets";
const contents: BoxContents = { conductors: [{ size: "12", count: 4 }], grounds: { size: "12", count: 2 }, devices: [], internalClamps: false };
const volume: Worked | null = boxVolume({ id: "box", contents, edition: "2023" });
export const says: string = volume === null ? "" : volume.citations.map(printCitation).join("; ");
// @ts-expect-error 13 AWG is not a size
boxVolume({ id: "box", contents: { ...contents, conductors: [{ size: "13", count: 1 }] }, edition: "2023" });
const outcome = calculate(boxVolumeCalculation, { contents, edition: "2023" });
export const value: string | undefined = outcome.ok ? outcome.result?.value : outcome.problems[0]?.what;
export type Sheets = typeof sheets;
`;

function strange(tarballs) {
  mkdirSync(stranger);
  const file = (name, text) => writeFileSync(join(stranger, name), text);
  file("package.json", JSON.stringify({ name: "stranger", private: true, type: "module" }));
  const install = run("npm", ["install", ...tarballs, "--no-audit", "--no-fund", "--ignore-scripts", "--prefer-offline", "--silent"], stranger);
  check("the packages install into an empty folder", install.good, install.said);
  file("plain.js", PLAIN);
  file("typed.ts", TYPED);
  file(
    "tsconfig.json",
    JSON.stringify({
      compilerOptions: { strict: true, module: "nodenext", target: "es2022", noEmit: true, types: [], exactOptionalPropertyTypes: true },
      include: ["typed.ts"],
    }),
  );
  const plain = node(["plain.js", join(root, "fixtures", "jobs", "rv-50-carport.yaml")], stranger);
  check("plain JavaScript reads a job and runs every calculation", plain.good, plain.said);
  const typed = node([join(root, "node_modules", "typescript", "bin", "tsc"), "-p", "."], stranger);
  check("strict TypeScript, the packages' own declarations checked too", typed.good, typed.said);
}

async function measure() {
  const { build } = await import("esbuild");
  for (const { name, kB, code } of CEILINGS) {
    const { outputFiles } = await build({
      stdin: { contents: code, resolveDir: stranger },
      bundle: true,
      minify: true,
      write: false,
      format: "esm",
      platform: "browser",
      target: "es2022",
      logLevel: "silent",
    });
    const size = gzipSync(outputFiles[0].contents, { level: 9 }).length / 1000;
    check(`${name}: ${size.toFixed(1)} kB gzipped, at most ${kB}`, size <= kB, `over its ceiling by ${(size - kB).toFixed(1)} kB`);
  }
}

try {
  const tarballs = ["engine", "sheets"].map((folder) => {
    const tarball = pack(folder);
    lint(folder, tarball);
    return tarball;
  });
  strange(tarballs);
  await measure();
} finally {
  rmSync(scratch, { recursive: true, force: true });
}
for (const failure of failures) console.error(`\n── ${failure}`);
process.exitCode = failures.length > 0 ? 1 : 0;
