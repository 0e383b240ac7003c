// What the project is made of: a CycloneDX list of every package that is installed with it, and docs/licences.md.
// sbom.mjs writes docs/licences.md; --verify says whether it is current and every licence one we take; --out FILE writes the CycloneDX JSON.
import { existsSync, mkdirSync, readdirSync, readFileSync, realpathSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const root = dirname(dirname(fileURLToPath(import.meta.url)));
const page = join(root, "docs/licences.md");

/** Licences of packages that go out with the product: they ask no more than that their words go along. */
const SHIPPED = new Set(["MIT", "ISC", "0BSD", "BSD-2-Clause", "BSD-3-Clause", "Apache-2.0", "OFL-1.1", "Unlicense", "CC0-1.0", "BlueOak-1.0.0", "Python-2.0"]);
/** Those of tools that only build and test, further. MPL-2.0 asks that changes to its own files be given on: none is changed. */
const TOOLS = new Set([...SHIPPED, "MPL-2.0", "CC-BY-4.0"]);

const json = (path) => JSON.parse(readFileSync(path, "utf8"));
const workspace = ["packages", "apps"].flatMap((folder) =>
  readdirSync(join(root, folder))
    .map((name) => join(root, folder, name))
    .filter((path) => existsSync(join(path, "package.json"))),
);
const ours = new Map(workspace.map((path) => [json(join(path, "package.json")).name, path]));

/** The folder of a package as another sees it: beside it in node_modules, or above. */
function resolve(name, from) {
  for (let folder = from; ; folder = dirname(folder)) {
    const path = join(folder, "node_modules", name);
    if (existsSync(join(path, "package.json"))) return realpathSync(path);
    if (folder === dirname(folder)) return undefined;
  }
}

/** Licences that a package tells in a file alone, as somebody read it there. */
const READ = new Map([["spawndamnit@3.0.1", "MIT"]]);

function licenceOf({ name, version, license, licenses }) {
  const read = READ.get(`${name}@${version}`);
  if (read !== undefined) return read;
  if (typeof license === "string") return license;
  if (license?.type) return license.type;
  return Array.isArray(licenses) ? licenses.map(({ type }) => type).join(" OR ") : "";
}

/** Whether one licence of a choice, or each of a sum, is taken. */
function taken(expression, allowed) {
  const bare = expression.replace(/^\((.*)\)$/, "$1");
  if (bare.includes(" OR ")) return bare.split(" OR ").some((part) => taken(part, allowed));
  if (bare.includes(" AND ")) return bare.split(" AND ").every((part) => taken(part, allowed));
  return allowed.has(bare);
}

const found = new Map();

function walk(name, from, shipped) {
  if (ours.has(name)) return;
  const path = resolve(name, from);
  if (path === undefined) return; // an optional package of another system
  const manifest = json(join(path, "package.json"));
  const key = `${manifest.name}@${manifest.version}`;
  const known = found.get(key);
  if (known && (known.shipped || !shipped)) return;
  found.set(key, { name: manifest.name, version: manifest.version, licence: licenceOf(manifest), shipped, alternates: manifest.os !== undefined });
  for (const next of Object.keys({ ...manifest.dependencies, ...manifest.optionalDependencies })) walk(next, path, shipped);
}

for (const path of [...workspace, root]) {
  const manifest = json(join(path, "package.json"));
  for (const name of Object.keys(manifest.dependencies ?? {})) walk(name, path, true);
  for (const name of Object.keys(manifest.devDependencies ?? {})) walk(name, path, false);
}

const integrity = new Map(
  [
    ...readFileSync(join(root, "pnpm-lock.yaml"), "utf8").matchAll(
      /^ {2}'?((?:@[^@\s']+)|[^@\s']+)@([^:('\s]+)'?:\n {4}resolution: \{integrity: (sha512-[A-Za-z0-9+/=]+)/gm,
    ),
  ].map(([, name, version, sum]) => [`${name}@${version}`, sum]),
);
const all = [...found.entries()].sort(([a], [b]) => (a < b ? -1 : 1)).map(([key, entry]) => ({ key, ...entry, integrity: integrity.get(key) }));

const wrong = all.filter(({ licence, shipped }) => !taken(licence, shipped ? SHIPPED : TOOLS));
const unsummed = all.filter((entry) => entry.integrity === undefined);

function purl({ name, version }) {
  return `pkg:npm/${name.startsWith("@") ? `%40${name.slice(1)}` : name}@${version}`;
}

const bom = {
  bomFormat: "CycloneDX",
  specVersion: "1.6",
  version: 1,
  metadata: {
    component: {
      type: "application",
      name: "branchwork",
      version: json(join(root, "apps/packet/package.json")).version,
      licenses: [{ license: { id: "MIT" } }],
    },
  },
  components: all.map((entry) => ({
    type: "library",
    "bom-ref": purl(entry),
    name: entry.name,
    version: entry.version,
    purl: purl(entry),
    scope: entry.shipped ? "required" : "excluded",
    licenses: /[ (]/.test(entry.licence) ? [{ expression: entry.licence }] : [{ license: { id: entry.licence } }],
    ...(entry.integrity === undefined ? {} : { hashes: [{ alg: "SHA-512", content: Buffer.from(entry.integrity.slice(7), "base64").toString("hex") }] }),
  })),
};

// Packages built for one system each are named without it, so that the page is the same on every machine.
const shippedRows = all.filter(({ shipped, alternates }) => shipped && !alternates);
const toolRows = all.filter(({ shipped, alternates }) => !shipped && !alternates);
const count = new Map();
for (const { licence } of toolRows) count.set(licence, (count.get(licence) ?? 0) + 1);
const markdown = `# Licences

Made by \`node scripts/sbom.mjs\` from what the lock file installs; \`node scripts/sbom.mjs --verify\` says whether it is current.
Branchwork itself is under the MIT licence. What goes out with it is under ${[...new Set(shippedRows.map(({ licence }) => licence))].sort().join(", ")}; the check takes no other kind than ${[...SHIPPED].join(", ")}.

## Goes out with the product (${shippedRows.length})

| package | version | licence |
|---|---|---|
${shippedRows.map(({ name, version, licence }) => `| ${name} | ${version} | ${licence} |`).join("\n")}

The browser inside @sparticuz/chromium is Chromium with the libraries it is built with: their notices are that project's own, and the licence above is the packing's alone.

## Only builds and tests (${toolRows.length})

${[...count.entries()]
  .sort(([a], [b]) => (a < b ? -1 : 1))
  .map(([licence, n]) => `${licence}: ${n}`)
  .join("; ")}.
`;

const args = process.argv.slice(2);
const out = args[args.indexOf("--out") + 1];
if (args.includes("--out")) {
  if (out === undefined) {
    console.error("sbom: --out needs a file");
    process.exit(2);
  }
  mkdirSync(dirname(join(root, out)), { recursive: true });
  writeFileSync(join(root, out), `${JSON.stringify(bom, null, 2)}\n`);
}
for (const { key, licence, shipped } of wrong)
  console.error(`sbom: ${key} is under "${licence}", which is not taken ${shipped ? "into the product" : "for tools"}`);
for (const { key } of unsummed) console.error(`sbom: ${key} has no digest in pnpm-lock.yaml`);
if (args.includes("--verify")) {
  const current = existsSync(page) && readFileSync(page, "utf8") === markdown;
  if (!current) console.error("sbom: docs/licences.md is not current; run node scripts/sbom.mjs");
  if (!current || wrong.length + unsummed.length > 0) process.exit(1);
  console.log(`${all.length} packages, every licence one we take`);
} else {
  writeFileSync(page, markdown);
  if (wrong.length + unsummed.length > 0) process.exit(1);
}
