// Rehearses a release in a copy: versions, changelogs, build, packages, their lint, and the packed command on several versions of Node.
// node scripts/release.mjs --dry-run [--nodes 20,22,24] [--repository https://host/owner/name [--pack folder]] [--keep].
// It never publishes; what a person does to publish is printed at the end. Without --repository there is nothing to publish: docs/release.md.
import { spawnSync } from "node:child_process";
import { copyFileSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { basename, dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { lackingIn, originOf, repositoryAddress } from "./publishable.mjs";

const root = dirname(dirname(fileURLToPath(import.meta.url)));
const windows = process.platform === "win32";
const PACKAGES = ["packages/engine", "packages/sheets", "apps/packet"];
const { values: options } = parseArgs({
  options: {
    "dry-run": { type: "boolean" },
    nodes: { type: "string", default: "20,22,24" },
    repository: { type: "string" },
    pack: { type: "string" },
    keep: { type: "boolean", default: false },
  },
});
if (!options["dry-run"]) {
  console.error("release: only --dry-run is done here; publishing is a person's act, and the rehearsal ends with how");
  process.exit(2);
}
/** Where the source is kept; null where the publisher has not said it. */
let address = null;
try {
  const named = options.repository;
  if (named !== undefined) address = repositoryAddress(named);
} catch (error) {
  console.error(`release: ${error.message}`);
  process.exit(2);
}
if (options.pack !== undefined && address === null) {
  console.error("release: no tarballs to publish without --repository; docs/release.md says why");
  process.exit(2);
}
if (options.pack !== undefined && existsSync(options.pack) && readdirSync(options.pack).length > 0) {
  console.error(`release: ${options.pack} has things in it; give a new folder`);
  process.exit(2);
}

const scratch = mkdtempSync(join(tmpdir(), "branchwork-release-"));
const copy = join(scratch, "copy");
const tarballs = join(scratch, "tarballs");
const failures = [];
const check = (what, good, detail = "") => {
  console.log(`${good ? "ok  " : "FAIL"}  ${what}`);
  if (!good) failures.push(`${what}\n${detail}`);
  return good;
};
/** What nothing after it can do without. */
const need = (what, { good, said }) => {
  if (!check(what, good, said)) throw new Error(`the rehearsal ends at: ${what}`);
};

function run(command, args, cwd, more = {}) {
  const env = { ...process.env, CI: "true", TURBO_TELEMETRY_DISABLED: "1", DO_NOT_TRACK: "1", ...more.env };
  const { status, stdout, stderr, error } = spawnSync(command, args, {
    maxBuffer: 64 << 20,
    ...more,
    cwd,
    env,
    encoding: "utf8",
    shell: windows && ["npm", "npx"].includes(command),
  });
  if (error) throw error;
  return { good: status === 0, status, stdout, said: `${stdout}${stderr}` };
}
const json = (path) => JSON.parse(readFileSync(path, "utf8"));
const pnpm = (...args) => run("npx", ["--yes", json(join(root, "package.json")).packageManager, ...args], copy);

/** History for the changelog, and the files as they stand here, committed or not. */
function copyTree() {
  need("a copy with its history", run("git", ["clone", "--quiet", "--no-hardlinks", root, copy], scratch));
  const changed = run("git", ["status", "--porcelain"], root).stdout.trim();
  if (changed !== "") console.log(`note  the tree differs from its last commit in ${changed.split("\n").length} places; a release is made from a commit`);
  const files = (args) =>
    run("git", ["ls-files", "-z", ...args], root)
      .stdout.split("\0")
      .filter(Boolean);
  for (const path of files(["--deleted"])) rmSync(join(copy, path), { force: true });
  for (const path of files(["--modified", "--others", "--exclude-standard"])) {
    if (!existsSync(join(root, path))) continue;
    mkdirSync(dirname(join(copy, path)), { recursive: true });
    copyFileSync(join(root, path), join(copy, path));
  }
}

function version() {
  need("the pinned packages install", pnpm("install", "--frozen-lockfile", "--prefer-offline"));
  const sets = readdirSync(join(copy, ".changeset")).filter((name) => name.endsWith(".md") && name !== "README.md");
  need("there is something to release", { good: sets.length > 0, said: "no file in .changeset; say what changed with: npx changeset" });
  need(`changeset version (${sets.length} changesets)`, run(process.execPath, [join(copy, "node_modules/@changesets/cli/bin.js"), "version"], copy));
  for (const folder of PACKAGES) {
    const { name, version: number } = json(join(copy, folder, "package.json"));
    const log = join(copy, folder, "CHANGELOG.md");
    const said = existsSync(log) ? readFileSync(log, "utf8") : "";
    check(`${name} ${number}, with its changelog`, number !== "0.0.0" && said.includes(`## ${number}`), said);
    console.log(
      said
        .split("\n")
        .map((line) => `        ${line}`)
        .join("\n"),
    );
  }
}

function build() {
  need("build", pnpm("exec", "turbo", "run", "build", "--output-logs=errors-only", "--ui=stream"));
  const packed = run(process.execPath, ["scripts/pack-check.mjs"], copy);
  check("pack-check: publint, attw, a stranger's import, sizes", packed.good, packed.said);
}

/** Packs as pnpm publishes: `workspace:` ranges become versions. Returns name, version and tarball of each. */
function pack() {
  mkdirSync(tarballs);
  return PACKAGES.map((folder) => {
    const at = join(copy, folder);
    copyFileSync(join(copy, "LICENSE"), join(at, "LICENSE"));
    const { name, version: number, ...rest } = json(join(at, "package.json"));
    if (address !== null)
      writeFileSync(join(at, "package.json"), `${JSON.stringify({ name, version: number, ...rest, ...originOf(address, folder) }, null, 2)}\n`);
    need(`${name} packs`, pnpm("--dir", at, "pack", "--pack-destination", tarballs));
    const tarball = join(tarballs, `${name.slice(1).replace("/", "-")}-${number}.tgz`);
    const { stdout } = run("tar", ["-tzf", tarball], scratch);
    const lines = stdout.split("\n");
    for (const file of ["LICENSE", "README.md", "CHANGELOG.md", "package.json"]) check(`${name} holds ${file}`, lines.includes(`package/${file}`), stdout);
    check(`${name} holds no test`, !lines.some((line) => /\.test\.[jt]s$/.test(line)), stdout);
    const manifest = JSON.parse(run("tar", ["-xzOf", tarball, "package/package.json"], scratch).stdout);
    const open = Object.entries({ ...manifest.dependencies, ...manifest.devDependencies }).filter(([, range]) => range.startsWith("workspace:"));
    check(`${name} names the versions it needs`, open.length === 0, open.join("\n"));
    const dry = run("npm", ["publish", tarball, "--dry-run", "--access", "public"], scratch);
    check(`npm publish --dry-run ${name}`, dry.good, dry.said);
    const lacking = lackingIn(manifest, folder).filter((what) => address !== null || !["repository", "bugs", "homepage"].includes(what));
    check(`${name} says of itself what a registry shows`, lacking.length === 0, lacking.join("\n"));
    return { name, version: number, tarball };
  });
}

/** The node program of a major version, from npm's own package of it. */
function nodeOf(major) {
  if (process.versions.node.startsWith(`${major}.`)) return process.execPath;
  const { good, stdout, said } = run("npx", ["--yes", `node@${major}`, "-p", "process.execPath"], scratch);
  return check(`Node ${major} is to be had`, good, said) ? stdout.trim().split("\n").at(-1) : null;
}

function smoke(packed) {
  const stranger = join(scratch, "stranger");
  mkdirSync(stranger);
  writeFileSync(join(stranger, "package.json"), JSON.stringify({ name: "stranger", private: true, type: "module" }));
  need(
    "the packages install into an empty folder",
    run("npm", ["install", ...packed.map(({ tarball }) => tarball), "--no-audit", "--no-fund", "--ignore-scripts", "--prefer-offline"], stranger),
  );
  const command = join(stranger, "node_modules", "@branchwork", "packet", "dist", "main.js");
  const job = join(root, "fixtures/jobs/rv-50-carport.yaml");
  const town = join(root, "fixtures/overlays/tamarack-hollow.yaml");
  for (const major of options.nodes.split(",")) {
    const node = nodeOf(major);
    if (node === null) continue;
    const out = `packet-${major}`;
    const tries = [
      ["check", [command, "check", job, "--overlay", town], 0],
      ["check of a bad job", [command, "check", join(root, "fixtures/jobs/bad-everything.yaml")], 1],
      ["a file that is not there", [command, "check", "nowhere.yaml"], 2],
      ["the demo's packet, PDF and all", [command, "build", job, "--overlay", town, "--date", "2026-01-01", "--out", out], 0],
      ["verify that PDF", [command, "verify", join(out, "rv-50-carport.pdf")], 0],
      [
        "calc",
        [command, "calc", "box-volume"],
        0,
        '{"contents":{"conductors":[{"size":"12","count":4}],"grounds":{"size":"12","count":2},"devices":[],"internalClamps":false},"edition":"2023"}',
      ],
      ["the manual page", [command, "manual"], 0],
      ["import of the engine", ["--input-type=module", "--eval", 'import { CHECKS } from "@branchwork/engine"; if (CHECKS.length < 50) process.exit(9);'], 0],
    ];
    const number = run(node, ["--version"], stranger).stdout.trim();
    for (const [what, args, wanted, input = ""] of tries) {
      const { status, said } = run(node, args, stranger, { input });
      check(`Node ${number}: ${what}`, status === wanted, `exit ${status}, ${wanted} wanted\n${said}`);
    }
  }
  const [first, ...others] = options.nodes.split(",").map((major) => join(stranger, `packet-${major}`, "rv-50-carport.pdf"));
  for (const other of others.filter((each) => existsSync(each) && existsSync(first)))
    check(`the same bytes of PDF as on the first Node: ${other.slice(stranger.length + 1)}`, readFileSync(first).equals(readFileSync(other)));
}

function notes(packed) {
  if (address === null)
    return `
Nothing can be published: no one has said where the source is kept. Give --repository https://host/owner/name; docs/release.md.`;
  if (options.pack !== undefined) {
    mkdirSync(options.pack, { recursive: true });
    for (const { tarball } of packed) copyFileSync(tarball, join(options.pack, basename(tarball)));
  }
  return `
To publish, from a clean commit on the main branch:
  1. npx changeset version; read the changelogs; commit. This rehearsal wrote them in its copy alone.
  2. npm test
  3. In continuous integration that npm trusts (provenance is signed there, from no other machine), with id-token permission:
     for each tarball${options.pack === undefined ? " (--pack writes them)" : ` in ${options.pack}`}, in this order:
${packed.map(({ tarball }) => `       npm publish ${tarball.slice(tarballs.length + 1)} --provenance --access public`).join("\n")}
  4. git tag each version; push the tags.
`;
}

try {
  copyTree();
  version();
  build();
  const packed = pack();
  smoke(packed);
  console.log(notes(packed));
} catch (error) {
  failures.push(error.stack);
} finally {
  if (options.keep) console.log(`kept: ${scratch}`);
  else rmSync(scratch, { recursive: true, force: true });
}
for (const failure of failures) console.error(`\n── ${failure}`);
if (failures.length === 0)
  console.log(address === null ? "rehearsed: sound, and not to be published as it stands" : "rehearsed: nothing stands in the way but a person's word");
process.exitCode = failures.length > 0 ? 1 : 0;
