import { text } from "node:stream/consumers";
import { CALCULATIONS, type Calculation, calculate, calculationOf, type GivenProblem } from "@branchwork/engine/calculations";
import { z } from "zod";
import { EXIT } from "./exit-codes.js";
import { jsonLine, oneLine } from "./terminal-text.js";

/** The command was called in a way that gives it nothing to work out. */
class CallError extends Error {
  override readonly name = "CallError";
}

export interface CalcOptions {
  readonly list?: boolean;
  readonly schema?: boolean;
  readonly example?: boolean;
  readonly edition?: string;
}

/** `calc`: one calculation by its name, from JSON on standard input to JSON on standard output, one result a line. */
export async function calc(name: string | undefined, options: CalcOptions, input: NodeJS.ReadStream): Promise<number> {
  try {
    if (options.list) return list();
    const calculation = named(name);
    if (options.schema || options.example) return describe(calculation, options);
    if (input.isTTY) throw new CallError(`calc reads JSON on standard input; branchwork calc ${calculation.name} --example prints an object it takes`);
    return work(calculation, await text(input), options);
  } catch (error) {
    if (!(error instanceof CallError)) throw error;
    console.error(oneLine(error.message));
    return EXIT.badInput;
  }
}

function list(): number {
  const width = Math.max(...CALCULATIONS.map(({ name }) => name.length));
  for (const { name, title } of CALCULATIONS) console.log(`${name.padEnd(width)}  ${title}`);
  return EXIT.ready;
}

function describe({ title, about, given, example }: Calculation, options: CalcOptions): number {
  const schema = () => ({ title, description: about, ...z.toJSONSchema(given, { io: "input" }) });
  console.log(options.example ? JSON.stringify(example) : JSON.stringify(schema(), null, 2));
  return EXIT.ready;
}

/** Works every record; a bad one is told on standard error and the others are worked all the same. */
function work(calculation: Calculation, source: string, options: CalcOptions): number {
  let bad = 0;
  for (const record of records(source)) {
    const outcome =
      "broken" in record ? { ok: false as const, problems: [record.broken] } : calculate(calculation, inEdition(calculation, record.plain, options));
    if (outcome.ok) {
      const { result, none } = outcome;
      console.log(jsonLine({ line: record.line, calculation: calculation.name, result, ...(none === null ? {} : { none }) }));
    } else {
      bad += 1;
      for (const { field, what, mend } of outcome.problems) console.error(oneLine(`line ${record.line}: ${field === "" ? "" : `${field}: `}${what}; ${mend}`));
    }
  }
  return bad > 0 ? EXIT.badInput : EXIT.ready;
}

function named(name: string | undefined): Calculation {
  const found = name === undefined ? null : calculationOf(name);
  if (found) return found;
  if (name === undefined) throw new CallError("say which calculation; branchwork calc --list names them");
  const word = name.toLowerCase();
  const near = CALCULATIONS.filter(
    (c) => c.name.includes(word) || c.title.toLowerCase().includes(word) || c.name.split("-").some((part) => word.includes(part)),
  );
  throw new CallError(
    `there is no calculation "${name}"${
      near.length > 0
        ? `; near it: ${near
            .map((c) => c.name)
            .slice(0, 8)
            .join(", ")}`
        : ""
    }; branchwork calc --list names all`,
  );
}

/** `--edition` stands in place of what the object says, where the calculation goes by edition. */
function inEdition(calculation: Calculation, plain: unknown, { edition }: CalcOptions): unknown {
  const takes = edition !== undefined && "edition" in calculation.given.shape && typeof plain === "object" && plain !== null && !Array.isArray(plain);
  return takes ? { ...plain, edition } : plain;
}

type Given = { readonly line: number } & ({ readonly plain: unknown } | { readonly broken: GivenProblem });

/** One JSON value over any number of lines, or one a line. */
function records(source: string): readonly Given[] {
  const clean = source.replace(/^\uFEFF/, "");
  const lines = clean
    .split(/\r?\n/)
    .map((text, at) => ({ text, line: at + 1 }))
    .filter(({ text }) => text.trim() !== "");
  const first = lines[0];
  if (first === undefined) throw new CallError("standard input is empty; give one JSON object, or one a line");
  const whole = read(clean);
  if ("plain" in whole) return [{ line: first.line, ...whole }];
  const byLine = lines.map(({ text, line }) => ({ line, ...read(text) }));
  // Where no line stands alone it is one broken object, and every line of it would be called broken.
  return byLine.some((record) => "plain" in record && Object(record.plain) === record.plain) ||
    lines.length === 1 ||
    lines.every(({ text }) => text.startsWith("{"))
    ? byLine
    : [{ line: lineOf(clean, whole.broken.what), ...whole }];
}

function read(source: string): { readonly plain: unknown } | { readonly broken: GivenProblem } {
  try {
    return { plain: JSON.parse(source) };
  } catch (error) {
    if (!(error instanceof SyntaxError)) throw error;
    return {
      broken: { field: "", what: `not JSON: ${error.message}`, mend: "names and text stand in double quotation marks, no comma before a closing bracket" },
    };
  }
}

/** The line of the position in the parser's message; the last where it names none, which is an end come too soon. */
function lineOf(source: string, message: string): number {
  const position = /position (\d+)/.exec(message)?.[1];
  return source.slice(0, position === undefined ? undefined : Number(position)).split("\n").length;
}
