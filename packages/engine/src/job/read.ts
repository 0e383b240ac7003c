import { type Document, isAlias, isCollection, isMap, isNode, isScalar, LineCounter, type Node, parseDocument, visit } from "yaml";
import type { z } from "zod";
import type { Assumption } from "../designed.js";
import { type Job, jobSchema } from "./schema.js";

export interface Issue {
  readonly line: number;
  readonly column: number;
  readonly path: string;
  readonly what: string;
  readonly mend: string;
}
export type JobReading =
  | { readonly ok: true; readonly job: Job; readonly assumptions: readonly Assumption[] }
  | { readonly ok: false; readonly issues: readonly Issue[] };

type Path = readonly (string | number)[];

/** Reads a job file (YAML text). Every issue names line and column, both counted from 1; every default filled is an assumption. */
export function readJob(text: string): JobReading {
  const lines = new LineCounter();
  const source = text.startsWith("\ufeff") ? text.slice(1) : text;
  const document = parseDocument(source, { lineCounter: lines, uniqueKeys: true, merge: false });
  const at = (offset: number) => {
    const { line, col } = lines.linePos(offset);
    return { line: Math.max(1, line), column: Math.max(1, col) };
  };
  const broken = [...document.errors, ...document.warnings];
  if (broken.length > 0)
    return {
      ok: false,
      issues: broken.map((e) => ({
        ...at(e.pos[0]),
        path: "",
        what: e.message.split("\n", 1)[0] ?? e.message,
        mend: "correct the YAML here; indent with spaces and write each key once",
      })),
    };
  const refused = refuse(document);
  if (refused) return { ok: false, issues: [{ ...at(refused.offset), path: "", what: refused.what, mend: refused.mend }] };
  const result = jobSchema.safeParse(document.toJS());
  if (!result.success) {
    return {
      ok: false,
      issues: result.error.issues
        .flatMap(explain)
        .map(({ path, what, mend, key }) => ({ ...at(offsetOf(document, path, key)), path: printPath(path), what, mend })),
    };
  }
  const crossed = crossFieldIssues(result.data);
  if (crossed.length > 0)
    return { ok: false, issues: crossed.map(({ path, what, mend }) => ({ ...at(offsetOf(document, path, false)), path: printPath(path), what, mend })) };
  return { ok: true, job: result.data, assumptions: defaultsTaken(document.toJS(), result.data) };
}

// ── Refused before the schema sees it ───────────────────────────────────────
const FORBIDDEN_KEYS = ["__proto__", "constructor", "prototype"];

function refuse(document: Document): { offset: number; what: string; mend: string } | null {
  let found: { offset: number; what: string; mend: string } | null = null;
  visit(document, {
    Alias(_key, node) {
      found ??= { offset: node.range?.[0] ?? 0, what: "aliases (*name) are not read in a job file", mend: "write the value out" };
      return visit.BREAK;
    },
    Pair(_key, pair) {
      const name = isScalar(pair.key) ? String(pair.key.value) : isAlias(pair.key) ? "*" : "";
      if (!FORBIDDEN_KEYS.includes(name)) return undefined;
      found ??= { offset: isNode(pair.key) ? (pair.key.range?.[0] ?? 0) : 0, what: `"${name}" cannot be a field`, mend: "remove it" };
      return visit.BREAK;
    },
  });
  return found;
}

// ── Schema issues in plain words ────────────────────────────────────────────
interface Explained {
  readonly path: Path;
  readonly what: string;
  readonly mend: string;
  readonly key: boolean;
}

function explain(issue: z.core.$ZodIssue): readonly Explained[] {
  const path = issue.path.map((step) => (typeof step === "number" ? step : String(step)));
  const name = path.at(-1) ?? "the file";
  if (issue.code === "unrecognized_keys")
    return issue.keys.map((key) => ({ path: [...path, key], what: `"${key}" is not a field here`, mend: "remove it or correct its spelling", key: true }));
  if (issue.code === "invalid_value")
    return [
      {
        path,
        what: issue.input === undefined && issue.message.includes("undefined") ? `${name} is missing` : `${name}: ${issue.message}`,
        mend: `write one of ${issue.values.map(String).join(", ")}`,
        key: false,
      },
    ];
  if (issue.code === "invalid_type") {
    const missing = issue.input === undefined && /received undefined/.test(issue.message);
    return [
      {
        path,
        what: missing ? `${name} is missing` : `${name}: ${issue.message}`,
        mend: missing ? `add ${name}` : `give ${name} as ${issue.expected}`,
        key: false,
      },
    ];
  }
  return [{ path, what: `${name}: ${issue.message}`, mend: issue.message, key: false }];
}

function printPath(path: Path): string {
  return path.map((step, i) => (typeof step === "number" ? `[${step}]` : i === 0 ? step : `.${step}`)).join("");
}

/** Where the node at `path` starts; where it is missing, the nearest node above it. */
function offsetOf(document: Document, path: Path, key: boolean): number {
  let node: Node | null = isNode(document.contents) ? document.contents : null;
  let offset = node?.range?.[0] ?? 0;
  for (const [index, step] of path.entries()) {
    if (!isCollection(node)) break;
    if (key && index === path.length - 1 && isMap(node)) {
      const pair = node.items.find((item) => isScalar(item.key) && String(item.key.value) === String(step));
      if (pair && isScalar(pair.key)) return pair.key.range?.[0] ?? offset;
    }
    const next: unknown = node.get(step, true);
    if (!isNode(next)) break;
    node = next;
    offset = node.range?.[0] ?? offset;
  }
  return offset;
}

// ── What one field alone cannot show ────────────────────────────────────────
function crossFieldIssues(job: Job): { path: Path; what: string; mend: string }[] {
  const issues: { path: Path; what: string; mend: string }[] = [];
  const { service } = job;
  if (service.load_method === "measured-demand" && !service.measured)
    issues.push({ path: ["service", "load_method"], what: "measured-demand asks for service.measured", mend: "add measured with peak, basis and from" });
  if (service.load_method === "existing-dwelling" && !service.existing)
    issues.push({
      path: ["service", "load_method"],
      what: "existing-dwelling asks for service.existing",
      mend: "add existing with floor_area and the appliances",
    });
  const seen = new Set<string>();
  for (const [i, circuit] of service.panel.circuits.entries()) {
    const base: Path = ["service", "panel", "circuits", i];
    if (seen.has(circuit.id)) issues.push({ path: [...base, "id"], what: `id "${circuit.id}" is used twice`, mend: "give each circuit an id of its own" });
    seen.add(circuit.id);
    const names = circuit.route.map((segment) => segment.name);
    for (const [j, box] of circuit.boxes.entries())
      if (!names.includes(box.after))
        issues.push({ path: [...base, "boxes", j, "after"], what: `no segment is called "${box.after}"`, mend: `name one of ${names.join(", ")}` });
    for (const [j, segment] of circuit.route.entries())
      if (names.indexOf(segment.name) !== j)
        issues.push({ path: [...base, "route", j, "name"], what: `two segments are called "${segment.name}"`, mend: "give each segment a name of its own" });
  }
  return issues;
}

// ── Defaults taken, in plain words ──────────────────────────────────────────
const SAID: Readonly<Record<string, string>> = {
  small_appliance_circuits: "two small-appliance circuits taken",
  laundry_circuits: "one laundry circuit taken",
  terminals_75C: "breaker and outlet taken as not marked for 75 °C conductors, so 60 °C to 100 A",
  terminal_temperature: "panel terminals taken as marked 75 °C",
  confirmed_with_authority: "the edition has not been confirmed with the authority",
  limit_percent: "voltage drop limit of 3 % taken (advisory)",
  insulation: "THWN-2 conductors taken",
  material: "copper taken",
  exposed_to_damage: "taken as not exposed to damage",
  wet_location: "box taken as not marked for wet locations",
  clamps: "box taken as without internal clamps",
  over: "trench taken as under open ground",
};

function defaultsTaken(given: unknown, read: unknown, path: Path = []): Assumption[] {
  if (Array.isArray(read)) return read.flatMap((item, i) => defaultsTaken(Array.isArray(given) ? given[i] : undefined, item, [...path, i]));
  if (typeof read !== "object" || read === null) return [];
  const had = typeof given === "object" && given !== null ? (given as Record<string, unknown>) : {};
  return Object.entries(read).flatMap(([key, value]) => {
    const here = [...path, key];
    if (!Object.hasOwn(had, key) && key in SAID && applies(key, read as Record<string, unknown>)) return [{ path: printPath(here), says: SAID[key]! }];
    return defaultsTaken(had[key], value, here);
  });
}

/** A default that cannot bear on the result is not worth a line: where a trench runs, say, of a segment that is not buried. */
function applies(key: string, holder: Record<string, unknown>): boolean {
  if (key === "over") return holder.place === "buried";
  if (key === "exposed_to_damage") return holder.place === "outdoors";
  return true;
}
