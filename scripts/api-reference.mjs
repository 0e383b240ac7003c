// Writes packages/engine/docs/api.md from the doc comments of what the engine exports; with --verify only says whether it is up to date.
import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const root = dirname(dirname(fileURLToPath(import.meta.url)));
const engine = join(root, "packages", "engine");
const page = join(engine, "docs", "api.md");

const SECTIONS = [
  ["", "From a job to a design"],
  ["job", "Job file"],
  ["basis", "Editions and citations"],
  ["checks", "Checks"],
  ["sizing", "Sizing"],
  ["service", "Service, loads and fault current"],
  ["equipment", "Circuits of equipment"],
  ["readings", "Meter readings"],
  ["inspection", "Inspection"],
  ["tables", "Code tables"],
];

/** The compiler's own declarations: every type written out, no bodies to read past. */
function declare(folder) {
  const tsc = join(root, "node_modules", "typescript", "bin", "tsc");
  const { stdout } = spawnSync(process.execPath, [tsc, "-p", "tsconfig.build.json", "--emitDeclarationOnly", "--declarationMap", "false", "--outDir", folder], {
    cwd: engine,
    encoding: "utf8",
  });
  if (!existsSync(join(folder, "index.d.ts"))) throw new Error(`the compiler wrote no declarations:\n${stdout}`);
}

/** The names an entry re-exports, with the file each stands in and the name it has there. */
function exportsOf(entry) {
  return [...entry.matchAll(/^export (?:type )?\{([^}]*)\} from "\.\/([^"]+)\.js";$/gms)].flatMap(([, names, file]) =>
    names
      .split(",")
      .map((name) => name.trim().replace(/^type /, ""))
      .filter((name) => name !== "")
      .map((name) => {
        const [local, as = local] = name.split(" as ");
        return { local, as, file };
      }),
  );
}

/** Where a declaration ends: at a semicolon outside all brackets, or at the brace that closes an interface or class. */
function endOf(text, start, braced) {
  let depth = 0;
  for (let at = start; at < text.length; at += 1) {
    const sign = text[at];
    if (sign === '"' || sign === "'" || sign === "`") {
      at += 1;
      while (text[at] !== sign) at += text[at] === "\\" ? 2 : 1;
    } else if (text.startsWith("/*", at)) at = text.indexOf("*/", at) + 1;
    else if ("{([".includes(sign)) depth += 1;
    else if ("})]".includes(sign)) {
      depth -= 1;
      if (braced && depth === 0) return at + 1;
    } else if (sign === ";" && depth === 0) return at + 1;
  }
  throw new Error(`no end to the declaration at ${text.slice(start, start + 60)}`);
}

function declarationOf(text, name) {
  const head = new RegExp(`^export (?:declare )?(function|const|interface|type|class) ${name.replace("$", "\\$")}\\b`, "m").exec(text);
  if (!head) return null;
  const kind = head[1];
  const code = text.slice(head.index, endOf(text, head.index, kind === "interface" || kind === "class"));
  const before = text.slice(0, head.index);
  const open = before.lastIndexOf("/**");
  const doc = open >= 0 && /\*\/\s*$/.test(before.slice(open)) && before.indexOf("*/", open) === before.lastIndexOf("*/") ? before.slice(open) : "";
  return { kind, code, doc: plainDoc(doc) };
}

const plainDoc = (comment) =>
  comment
    .replace(/^\/\*\*|\*\/\s*$/g, "")
    .replace(/^\s*\* ?/gm, "")
    .replace(/\{@link (\w+)\}/g, "`$1`")
    .trim();

/** A declaration as it is printed: no keywords that say nothing here, two spaces, and a table by its name alone. */
function printed({ kind, code }) {
  const short = code
    .replace(/^export (declare )?/, "")
    .replace(/import\("[^"]+"\)\./g, "")
    .replace(/^( {4})+/gm, (spaces) => " ".repeat(spaces.length / 2));
  if (kind === "type" && short.split("\n").length > 60)
    return `${/^type \w+/.exec(short)[0]} = …; // the shape of a job file: see the JSON Schema that jobJsonSchema gives`;
  if (kind !== "const" || short.split("\n").length <= 8) return short;
  const table = /readonly id: "([^"]+)";\s+readonly title: ("[^"]*"|'[^']*');/.exec(short);
  const name = /^const (\w+)/.exec(short)[1];
  return table ? `const ${name}: CodeTable; // ${table[2].slice(1, -1)}` : `const ${name}: { … };`;
}

/** The declaration in the file, or in the one that the file has it from. */
function find(folder, file, local) {
  const text = readFileSync(join(folder, `${file}.d.ts`), "utf8");
  const handed = exportsOf(text).find(({ as }) => as === local);
  return handed ? find(folder, join(dirname(file), handed.file), handed.local) : declarationOf(text, local);
}

function entry({ as, local, file }, folder, undocumented) {
  const found = find(folder, file, local);
  if (!found) throw new Error(`${file} declares no ${local}`);
  if (found.doc === "" && found.kind === "function") undocumented.push(`${file}: ${local}`);
  const also = as === local ? "" : ` (in the code: \`${local}\`)`;
  return `### ${as}${also}\n\n${found.doc === "" ? "" : `${found.doc}\n\n`}\`\`\`ts\n${printed(found)}\n\`\`\`\n`;
}

/** Name, title and purpose of each calculation, as its file says them. */
function calculations() {
  const folder = join(engine, "src", "calculations");
  return readdirSync(folder)
    .sort()
    .flatMap((file) => {
      const text = readFileSync(join(folder, file), "utf8");
      const [name, title, about] = ["name", "title", "about"].map((field) => new RegExp(`^  ${field}:\\s+("(?:[^"\\\\]|\\\\.)*")`, "m").exec(text)?.[1]);
      return text.includes("= calculation({") ? [`| \`${JSON.parse(name)}\` | ${JSON.parse(title)} | ${JSON.parse(about)} |`] : [];
    });
}

function write(folder) {
  const undocumented = [];
  const exported = exportsOf(readFileSync(join(folder, "index.d.ts"), "utf8"));
  const others = [...new Set(exported.map(({ file }) => file.split("/")[0]))].filter((under) => !SECTIONS.some(([known]) => known === under));
  const named = others
    .filter((under) => exported.some(({ file }) => file.startsWith(`${under}/`)))
    .sort()
    .map((under) => [under, under[0].toUpperCase() + under.slice(1)]);
  const parts = [...SECTIONS, ...named].map(([under, title]) => {
    const here = exported.filter(({ file }) => (file.includes("/") ? file.split("/")[0] : "") === under);
    // Case would otherwise order by the machine's language.
    here.sort((a, b) => (a.as.toLowerCase() < b.as.toLowerCase() ? -1 : 1));
    return `## ${title}\n\n${here.map((one) => entry(one, folder, undocumented)).join("\n")}`;
  });
  const subpath = exportsOf(readFileSync(join(folder, "calculations", "index.d.ts"), "utf8"))
    .map((one) => entry({ ...one, file: `calculations/${one.file}` }, folder, undocumented))
    .join("\n");
  if (undocumented.length > 0) console.error(`without a doc comment:\n  ${undocumented.join("\n  ")}`);
  return `<!-- Generated by scripts/api-reference.mjs from the doc comments. Do not edit: write the comment, then run pnpm api-reference. -->

# What @branchwork/engine exports

Units stand in the doc comments. A \`Worked\` value carries its unit, expression, cells read, rounding and citations with it.

${parts.join("\n")}
## Calculations by name

From \`@branchwork/engine/calculations\`. Each is also a file of its own, with its types: \`@branchwork/engine/calculations/box-volume\` exports \`boxVolumeCalculation\`.

| name | title | what it works out |
|---|---|---|
${calculations().join("\n")}

${subpath}`;
}

const folder = mkdtempSync(join(tmpdir(), "branchwork-api-"));
try {
  declare(folder);
  const text = write(folder);
  if (process.argv.includes("--verify")) {
    const standing = existsSync(page) ? readFileSync(page, "utf8") : "";
    if (standing !== text) {
      const lines = standing.split("\n");
      const at = text.split("\n").findIndex((line, number) => line !== lines[number]);
      console.error(`packages/engine/docs/api.md is not up to date from line ${at + 1} on; run: pnpm api-reference`);
      process.exitCode = 1;
    }
  } else {
    mkdirSync(dirname(page), { recursive: true });
    writeFileSync(page, text);
    console.log(`packages/engine/docs/api.md: ${text.split("\n### ").length - 1} exports`);
  }
} finally {
  rmSync(folder, { recursive: true, force: true });
}
