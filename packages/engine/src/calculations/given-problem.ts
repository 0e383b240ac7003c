import type * as z from "zod";
import { fieldsAt, valueAt } from "../job/schema-fields.js";
import type { Calculation } from "./calculation.js";

/** What is wrong with one field of what a calculation was given, and what mends it. `field` is empty for the whole. */
export interface GivenProblem {
  readonly field: string;
  readonly what: string;
  readonly mend: string;
}

type Path = readonly PropertyKey[];

/** One problem a field, in the order of the schema. `plain` is what was given. */
export function givenProblems(calculation: Calculation, issues: readonly z.core.$ZodIssue[], plain: unknown): readonly GivenProblem[] {
  const seen = new Set<string>();
  return issues.flatMap((issue) => problemsOf(calculation.given, issue, plain)).filter(({ field }) => !seen.has(field) && seen.add(field));
}

function problemsOf(schema: z.ZodType, issue: z.core.$ZodIssue, plain: unknown): readonly GivenProblem[] {
  const field = printPath(issue.path);
  if (issue.code === "unrecognized_keys") {
    const known = fieldsAt(schema, issue.path);
    const mend = known.length > 0 ? `leave it out; the fields here are ${known.join(", ")}` : "leave it out";
    return issue.keys.map((key) => ({ field: printPath([...issue.path, key]), what: "is not a field here", mend }));
  }
  const value = valueAt(plain, issue.path);
  const mend = wanted(issue);
  return [
    { field, what: value === undefined ? "is missing" : `${show(value)} does not serve`, mend: value === undefined ? `add it: ${mend}` : `give ${mend}` },
  ];
}

const EXPECTED: Readonly<Record<string, string>> = {
  string: "text in quotation marks",
  number: "a number without quotation marks",
  int: "a whole number",
  boolean: "true or false",
  object: "a group of fields in { }",
  array: "a list in [ ]",
};

function wanted(issue: z.core.$ZodIssue): string {
  const things = "origin" in issue && issue.origin === "array" ? " entries" : "origin" in issue && issue.origin === "string" ? " characters" : "";
  if (issue.code === "invalid_value") return `${issue.values.length > 1 ? "one of " : ""}${issue.values.map((value) => JSON.stringify(value)).join(", ")}`;
  if (issue.code === "invalid_type") return EXPECTED[issue.expected] ?? issue.expected;
  if (issue.code === "too_small") return issue.inclusive ? `${issue.minimum}${things} or more` : `more than ${issue.minimum}`;
  if (issue.code === "too_big") return `${issue.maximum}${things} or less`;
  if (issue.code === "invalid_union") return "one of the kinds its schema names, with the fields of that kind";
  return issue.message;
}

function show(value: unknown): string {
  const json = JSON.stringify(value) ?? String(value);
  return json.length > 60 ? `${json.slice(0, 60)}…` : json;
}

const printPath = (path: Path): string =>
  path.reduce<string>((out, step) => (typeof step === "number" ? `${out}[${step}]` : out === "" ? String(step) : `${out}.${String(step)}`), "");
