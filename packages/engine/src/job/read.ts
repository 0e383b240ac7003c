import { isAlias, isMap, isNode, isScalar, LineCounter, parseDocument, visit } from "yaml";
import type { Assumption } from "../designed.js";
import { crossFieldProblems } from "./cross-fields.js";
import { assumedDefaults } from "./defaults.js";
import { offsetOf } from "./node-offset.js";
import { type Problem, problemsOf } from "./problem.js";
import { type Job, jobSchema } from "./schema.js";

export interface Issue {
  /** Both counted from 1. */
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

const MAX_CHARACTERS = 300_000;
const MOST_ISSUES = 50;
/** Controls but tab and line ends, marks that turn the direction of writing, halves of a pair, and what is no character: a name on paper must read as it is. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is looked for
const UNPRINTABLE = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069\ufeff\ufff9-\uffff]|\p{Cs}/u;
const PLAIN_YAML = "indent with spaces, quote text that holds a colon or a #, and give each name once";

/**
 * Reads a job file (YAML text): quantities come out in the engine's units, and every default that was filled is an assumption.
 * A file that cannot be read gives issues with their line and column; nothing is thrown for bad text.
 */
export function readJob(text: string): JobReading {
  const source = text.startsWith("\uFEFF") ? text.slice(1) : text;
  const lines = new LineCounter();
  const issue = (offset: number, path: string, what: string, mend: string): Issue => {
    const { line, col } = lines.linePos(offset);
    return { line: Math.max(1, line), column: Math.max(1, col), path, what, mend };
  };
  const refuse = (...issues: Issue[]): JobReading => ({ ok: false, issues });
  if (source.length > MAX_CHARACTERS)
    return refuse(issue(0, "", `longer than ${MAX_CHARACTERS} characters`, "a job file is a few kilobytes; check that this is one"));

  const parsed = parseStrictly(source, lines);
  if (parsed === null) return refuse(issue(0, "", "the values are nested too deeply to read", "a job nests fewer than ten levels"));
  const { document, refused } = parsed;
  const banned = refused.map(({ offset, what, mend }) => issue(offset, "", what, mend));
  if (banned.length > 0) return refuse(...firstOf(banned));

  const root = isNode(document.contents) ? document.contents : null;
  const plain: unknown = document.toJS({ maxAliasCount: 0 });
  const placed = ({ path, atKey, what, mend }: Problem) => issue(offsetOf(root, path, atKey), printPath(path), what, mend);
  if (!isMap(root)) return refuse(issue(0, "", "the file holds no job", 'begin with "format: branchwork-job/1"'));
  const result = jobSchema.safeParse(plain);
  if (!result.success) return { ok: false, issues: firstOf(inOrder(problemsOf(result.error.issues, plain).map(placed))) };
  const crossed = crossFieldProblems(result.data);
  if (crossed.length > 0) return { ok: false, issues: inOrder(crossed.map(placed)) };
  return { ok: true, job: result.data, assumptions: assumedDefaults(plain, result.data).map(({ path, says }) => ({ path: printPath(path), says })) };
}

interface Refused {
  readonly offset: number;
  readonly what: string;
  readonly mend: string;
}

/** As many issues as a person reads; the last says how many more there are. */
export function firstOf<T extends { readonly what: string }>(issues: readonly T[]): readonly T[] {
  const last = issues[MOST_ISSUES - 1];
  if (issues.length <= MOST_ISSUES || last === undefined) return issues;
  return [...issues.slice(0, MOST_ISSUES - 1), { ...last, what: `${last.what}; and ${issues.length - MOST_ISSUES} more like these` }];
}

/** The parsed document with what is never allowed in one, broken YAML included; null when it is nested deeper than the stack holds. */
export function parseStrictly(source: string, lineCounter: LineCounter) {
  try {
    // The parser's own search for double names takes the square of their count.
    const document = parseDocument(source, { lineCounter, uniqueKeys: false, merge: false, strict: true, prettyErrors: false });
    const broken = [...document.errors, ...document.warnings];
    if (broken.some(({ message }) => message.startsWith("Maximum call stack"))) return null;
    const refused: Refused[] = broken.map(({ pos, message }) => ({ offset: pos[0], what: message.split("\n", 1)[0]!.slice(0, 200), mend: PLAIN_YAML }));
    if (refused.length > 0) return { document, refused };
    visit(document, {
      Alias: (_, node) => {
        refused.push({
          offset: node.range?.[0] ?? 0,
          what: `"*${node.source.slice(0, 60)}" repeats a value by alias, which is not allowed`,
          mend: "write the value out",
        });
      },
      Scalar: (_, node) => {
        const unseen = typeof node.value === "string" ? UNPRINTABLE.exec(node.value)?.[0] : undefined;
        if (unseen !== undefined)
          refused.push({
            offset: node.range?.[0] ?? 0,
            what: `the text holds the character U+${unseen.codePointAt(0)!.toString(16).toUpperCase().padStart(4, "0")}, which cannot be printed or changes the order of the others`,
            mend: "write the text again by hand in place of pasting it",
          });
      },
      Map: (_, map) => {
        const names = new Set<unknown>();
        for (const { key } of map.items) {
          if (!isScalar(key)) continue;
          if (names.has(String(key.value)))
            refused.push({
              offset: key.range?.[0] ?? 0,
              what: `the name "${String(key.value).slice(0, 60)}" stands twice in one group`,
              mend: "give each name once",
            });
          names.add(String(key.value));
        }
      },
      Pair: (_, pair) => {
        if (isScalar(pair.key) && pair.key.value === "__proto__")
          refused.push({ offset: pair.key.range?.[0] ?? 0, what: '"__proto__" is not a field', mend: "remove it" });
        else if (isNode(pair.key) && !isScalar(pair.key) && !isAlias(pair.key))
          refused.push({ offset: pair.key.range?.[0] ?? 0, what: "a list or a group stands where a name belongs", mend: "use a plain name before the colon" });
      },
    });
    return { document, refused };
  } catch (error) {
    // The parser and the visitor recurse: RangeError is the stack running out. Anything else is a bug and goes on up.
    if (error instanceof RangeError) return null;
    throw error;
  }
}

const printPath = (path: Path) => path.map((step, i) => (typeof step === "number" ? `[${step}]` : i === 0 ? step : `.${step}`)).join("");

const inOrder = (issues: readonly Issue[]) => [...issues].sort((a, b) => a.line - b.line || a.column - b.column);
