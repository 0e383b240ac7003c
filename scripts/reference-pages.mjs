// The pages of docs/ that are written from the program itself: the job file's fields, the checks, the calculations, the manual page.
import { spawnSync } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";

const root = dirname(dirname(fileURLToPath(import.meta.url)));
const engineFile = join(root, "packages", "engine", "dist", "index.js");
if (!existsSync(engineFile)) throw new Error("the engine is not built; run: npm run demo");

const engine = await import(pathToFileURL(engineFile).href);
const { CALCULATIONS } = await import(pathToFileURL(join(root, "packages", "engine", "dist", "calculations", "index.js")).href);
const z = await import(pathToFileURL(createRequire(engineFile).resolve("zod")).href);

const MARK = "<!-- Written by scripts/docs-site.mjs from the program. Do not edit: change the program, then run node scripts/docs-site.mjs --write. -->";
const cell = (text) => String(text).replaceAll("|", "\\|").replaceAll("<", "&lt;").replace(/\s+/g, " ").trim();
const row = (...cells) => `| ${cells.map(cell).join(" | ")} |`;
const table = (heads, rows) => [row(...heads), `|${heads.map(() => "---").join("|")}|`, ...rows].join("\n");
const code = (text) => `\`${text}\``;

const firstSays = (schema, text) => schema.safeParse(text).error?.issues[0]?.message ?? "";

/** Units and bounds of a quantity, as the reader itself tells them to somebody who writes it wrong; null where the field is no quantity. */
function quantity(schema) {
  const units = /use one of (.*)$/.exec(firstSays(schema, "1 parsec"))?.[1];
  if (!units) return /°F/.test(firstSays(schema, "1 parsec")) ? "temperature in °F or °C" : null;
  const bounds = /is outside (.*)$/.exec(firstSays(schema, `999999999999 ${units.split(", ")[0]}`))?.[1];
  return `quantity in ${units}${bounds ? `; ${bounds}` : ""}`;
}

function jobSchema() {
  return z.toJSONSchema(engine.jobSchema, {
    io: "input",
    override({ zodSchema, jsonSchema }) {
      const inner = zodSchema._zod.def.type === "pipe" ? quantity(zodSchema) : null;
      if (inner) jsonSchema["x-quantity"] = inner;
    },
  });
}

function between({ minimum: least, maximum: most }) {
  const unbounded = Number.MAX_SAFE_INTEGER;
  const low = least === undefined || least <= -unbounded ? null : least;
  const high = most === undefined || most >= unbounded ? null : most;
  if (low !== null && high !== null) return ` ${low} to ${high}`;
  return low !== null ? `, ${low} or more` : high !== null ? `, at most ${high}` : "";
}

/** What a field holds, in words; an object or a list of objects is named by its own heading. */
function holds(field) {
  if (field["x-quantity"]) return field["x-quantity"];
  if (field.$ref) return "fields of a panel, see above";
  if ("const" in field) return code(field.const);
  if (field.enum) return choices(field.enum);
  if (field.anyOf ?? field.oneOf) return (field.anyOf ?? field.oneOf).map(holds).join(" or ");
  if (field.type === "array") {
    const fixed = field.prefixItems ? field.prefixItems.map(holds).join("; ") : holds(field.items);
    return `list${field.maxItems === undefined ? "" : ` of ${field.minItems ?? 0} to ${field.maxItems}`}: ${fixed}`;
  }
  if (field.type === "object") return field.properties ? "fields, see below" : "names and values";
  if (field.type === "boolean") return "`true` or `false`";
  if (field.type === "integer") return `whole number${between(field)}`;
  if (field.type === "number") return `number${between(field)}`;
  if (field.pattern) return `text of the form ${code(field.pattern)}`;
  return "text";
}

/** Sizes by size; wire sizes, of which there are many, as a range. */
function choices(values) {
  const order = [engine.SIZES, engine.ALL_TRADE_SIZES].find((sizes) => values.length > 3 && values.every((value) => sizes.includes(value)));
  const sorted = order ? values.toSorted((a, b) => order.indexOf(a) - order.indexOf(b)) : values;
  const kcmil = sorted.indexOf("250");
  if (order !== engine.SIZES || kcmil < 1) return sorted.map(code).join(", ");
  return `wire size: AWG ${code(sorted[0])} to ${code(sorted[kcmil - 1])}, kcmil ${code(sorted[kcmil])} to ${code(sorted.at(-1))}`;
}

const plainDefault = (value) => (typeof value === "object" ? (Object.keys(value).length === 0 ? "empty" : JSON.stringify(value)) : String(value));

/** One section an object, its own fields in a table, then the objects under it. */
function sections(schema, path, title, defs, seen, told) {
  // A circuit's route and a feeder's have the same fields: told once.
  const same = JSON.stringify(schema);
  if (told.has(same)) return [`## ${code(title)}\n\nAs ${code(told.get(same))}.`];
  told.set(same, title);
  const required = new Set(schema.required ?? []);
  const fields = Object.entries(schema.properties);
  const rows = fields.map(([name, field]) =>
    row(
      code(name),
      holds(field),
      required.has(name) ? "yes" : field.default === undefined ? "no" : `no: ${plainDefault(field.default)}`,
      field.description ?? "",
    ),
  );
  const under = fields.flatMap(([name, field]) => {
    const listed = field.type === "array";
    const inner = listed ? field.items : field;
    const at = `${path === "" ? "" : `${path}.`}${name}${listed ? "[]" : ""}`;
    const choices = inner?.anyOf ?? inner?.oneOf ?? [inner];
    return choices.flatMap((choice, number) => {
      const named = choices.length > 1 ? `${at} (${number + 1} of ${choices.length})` : at;
      if (choice?.$ref) {
        if (seen.has(choice.$ref)) return [];
        return sections(defs[choice.$ref.split("/").at(-1)], at, named, defs, new Set([...seen, choice.$ref]), told);
      }
      return choice?.properties ? sections(choice, at, named, defs, seen, told) : [];
    });
  });
  return [`## ${title === "" ? "The file" : code(title)}\n\n${table(["field", "holds", "needed", "meaning"], rows)}`, ...under];
}

function jobFile() {
  const schema = jobSchema();
  return `# Fields of a job file

${MARK}

A job file is YAML. A quantity is a number and a unit, as people write it: \`85 ft\`, \`26 m\`, \`1-1/4 in\`, \`104 °F\`, \`12 kVA\`. A field that is not listed here is refused with its line. Where *needed* says \`no\` and a value, that value is taken when the field is left out, and the packet lists what was taken as an assumption. Sizes left out of a route are computed.

The same is in \`fixtures/job.schema.json\` for an editor that completes YAML: begin the file with \`# yaml-language-server: $schema=…/job.schema.json\`. The reader knows more than the schema: which fields belong together, and which outlet needs which. What it refuses it names with line, reason and remedy. Examples to copy from stand in \`fixtures/jobs\`.

${sections(schema, "", "", schema.$defs ?? {}, new Set(), new Map()).join("\n\n")}
`;
}

function checks() {
  const { EDITIONS, CHECKS } = engine;
  const note = { published: "published", "one-source": "one source", memory: "from memory: verify", practice: "common practice" };
  const rows = CHECKS.map(({ id, title, rule }) =>
    row(
      code(id),
      title,
      ...EDITIONS.map((edition) => (rule === null ? "–" : (rule.sections[edition] ?? "no such rule"))),
      rule === null ? "practice or local law" : note[rule.standing],
    ),
  );
  const count = (standing) => CHECKS.filter(({ rule }) => rule?.standing === standing).length;
  return `# The checks

${MARK}

Every job goes through all ${CHECKS.length} checks. A check says *pass*, *fail*, *caution*, *not applicable* with the reason, or *look*: a person has to see something on site. Only *fail* makes a job not ready. An overlay can set a check aside, judge it harder or softer, or add one; the packet prints that with its reason.

The columns give the section of NFPA 70 in each edition. The last says how well the section is known: ${count("published")} as published by two or more sources that agree, ${count("one-source")} by one source, ${count("memory")} from memory, to be verified against the adopted text. A check with no section rests on common practice or local law.

${table(["id", "what it asks", ...engine.EDITIONS, "known"], rows)}
`;
}

function given(schema) {
  const { properties, required = [], $defs = {} } = z.toJSONSchema(schema, { io: "input" });
  const resolve = (field) => (field.$ref ? { ...$defs[field.$ref.split("/").at(-1)], ...field } : field);
  const short = (field) => {
    const inner = resolve(field);
    return inner.enum && inner.enum.length > 6
      ? `one of ${inner.enum.length}: ${inner.enum.slice(0, 3).map(code).join(", ")} …`
      : holds({ ...inner, $ref: undefined }).replace("fields, see below", "fields");
  };
  return table(
    ["given", "holds", "needed", "meaning"],
    Object.entries(properties)
      .filter(([name]) => name !== "id")
      .map(([name, field]) => row(code(name), short(field), required.includes(name) ? "yes" : "no", resolve(field).description ?? "")),
  );
}

function calculations() {
  const each = CALCULATIONS.map(({ name, title, about, given: schema, example, none, editions }) =>
    [
      `## ${code(name)}`,
      `${title}. ${about}${editions.length === engine.EDITIONS.length ? "" : ` Editions ${editions.join(", ")} only.`}`,
      given(schema),
      `\`\`\`json\n${JSON.stringify(example)}\n\`\`\``,
      ...(none === null ? [] : [`No result: ${none}`]),
    ].join("\n\n"),
  );
  return `# The calculations

${MARK}

${CALCULATIONS.length} calculations, each by its name on the command line, from JavaScript, or from any language that can start a program: see [the importer's guide](importer.md). Every one also takes an \`id\`, which its results are named by. A result carries its unit, an expression that a pencil can redo, the table cells read, the rounding and the citations. \`branchwork calc <name> --schema\` prints the whole schema of what one is given.

${table(
  ["name", "title"],
  CALCULATIONS.map(({ name, title }) => row(`[${code(name)}](#${name})`, title)),
)}

${each.join("\n\n")}
`;
}

function manual() {
  const { status, stdout, stderr } = spawnSync(process.execPath, [join(root, "apps", "packet", "dist", "main.js"), "manual"], { encoding: "utf8" });
  if (status !== 0) throw new Error(`branchwork manual ended with ${status}:\n${stderr}`);
  return stdout;
}

/** Path from the repository's root, with the text that belongs there. */
export const referencePages = () => [
  { path: "docs/guides/job-file.md", text: jobFile() },
  { path: "docs/guides/checks.md", text: checks() },
  { path: "docs/guides/calculations.md", text: calculations() },
  { path: "docs/man/branchwork.1", text: manual() },
];

/** The pages that are not what the program would write now. */
export const stalePages = () =>
  referencePages().filter(({ path, text }) => !existsSync(join(root, path)) || readFileSync(join(root, path), "utf8").replaceAll("\r\n", "\n") !== text);
