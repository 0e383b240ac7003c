import type * as z from "zod";
import { editDistance } from "./edit-distance.js";
import { jobSchema } from "./schema.js";
import { fieldsAt, valueAt } from "./schema-fields.js";

/** What is wrong at a path of the job, before it has a line. */
export interface Problem {
  readonly path: readonly (string | number)[];
  /** True when the name itself is wrong, not what it holds. */
  readonly atKey: boolean;
  readonly what: string;
  readonly mend: string;
}

/** Foreign names told in one group; each is compared with every name that is known. */
const MOST_KEYS = 50;
const MOST_PROBLEMS = 1000;

/** The schema's issues in plain words. `plain` is the job as parsed, before the schema. */
export function problemsOf(issues: readonly z.core.$ZodIssue[], plain: unknown, schema: z.ZodType = jobSchema): readonly Problem[] {
  return issues.slice(0, MOST_PROBLEMS).flatMap((issue): Problem[] => {
    const path = issue.path.map((step) => (typeof step === "number" ? step : String(step)));
    const name = path.filter((step) => typeof step === "string").at(-1) ?? "the file";
    const problem = (what: string, mend: string): Problem => ({ path, atKey: false, what, mend });
    if (issue.code === "unrecognized_keys") return issue.keys.slice(0, MOST_KEYS).map((key) => unknownKey(schema, path, key));
    const value = valueAt(plain, path);
    if (value === undefined) return [problem(`"${name}" is missing`, `add ${name}: ${wanted(issue)}`)];
    if (typeof value === "number" && allowed(issue).includes(String(value)))
      return [problem(`${name}: ${value} stands without quotation marks`, `write "${value}" in quotation marks`)];
    if (allowed(issue).length > 0) return [problem(`${name}: ${show(value)} is not one of the choices`, `write ${wanted(issue)}`)];
    if (issue.code === "invalid_type" && issue.expected === "string" && typeof value === "number" && issue.message.startsWith("Invalid input"))
      return [problem(`${name}: ${value} is read as a number, text is wanted`, `write "${value}" in quotation marks`)];
    if (issue.code === "invalid_type") return [problem(`${name}: ${show(value)} is not ${wanted(issue)}`, `give ${name} as ${wanted(issue)}`)];
    if (issue.code === "too_small")
      return [problem(`${name}: ${show(value)} is too small or too short`, `give at least ${issue.minimum}${unitOf(issue.origin)}`)];
    if (issue.code === "too_big") return [problem(`${name}: ${show(value)} is too large or too long`, `give at most ${issue.maximum}${unitOf(issue.origin)}`)];
    return [problem(`${name}: ${issue.message}`, issue.code === "invalid_format" ? issue.message : "correct the value")];
  });
}

const unitOf = (origin: string) => (origin === "string" ? " characters" : origin === "array" ? " entries" : "");

function show(value: unknown): string {
  if (value === null) return "an empty value";
  if (Array.isArray(value)) return "a list";
  return typeof value === "object" ? "a group of fields" : typeof value === "string" ? `"${value.slice(0, 60)}"` : String(value);
}

/** The literal choices an issue names, also those inside a union. */
function allowed(issue: z.core.$ZodIssue): readonly string[] {
  if (issue.code === "invalid_value") return issue.values.map(String);
  if (issue.code !== "invalid_union") return [];
  if (issue.inclusive !== false && issue.options !== undefined) return issue.options.map(String);
  return issue.errors.flatMap((branch) => branch.flatMap(allowed));
}

const EXPECTED: Readonly<Record<string, string>> = {
  string: "text",
  number: "a number",
  int: "a whole number",
  boolean: "true or false",
  object: "a group of fields",
  array: "a list",
};

function wanted(issue: z.core.$ZodIssue): string {
  const choices = allowed(issue);
  if (choices.length === 1) return choices[0]!;
  if (choices.length > 1) return `one of ${choices.join(", ")}`;
  if (issue.code !== "invalid_type") return "a value";
  return issue.message.startsWith("Invalid input") ? (EXPECTED[issue.expected] ?? issue.expected) : issue.message.replace(/^write /, "");
}

function unknownKey(schema: z.ZodType, path: Problem["path"], key: string): Problem {
  const known = fieldsAt(schema, path);
  const near = known.map((field) => ({ field, steps: editDistance(key.toLowerCase(), field) })).sort((a, b) => a.steps - b.steps)[0];
  const mend = near && near.steps <= Math.max(2, Math.floor(key.length / 3)) ? `did you mean "${near.field}"?` : `the fields here are ${known.join(", ")}`;
  return { path: [...path, key], atKey: true, what: `"${key.slice(0, 60)}" is not a field here`, mend };
}
