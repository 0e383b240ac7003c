import { isMap, isNode, LineCounter, type Node } from "yaml";
import * as z from "zod";
import { offsetOf } from "../job/node-offset.js";
import { firstOf, type Issue, parseStrictly } from "../job/read.js";
import { METER_OHMS, type Meter } from "./house-circuit.js";
import { type ReadingName, TERMINALS } from "./wiring.js";

const NAMES = Object.keys(TERMINALS) as [ReadingName, ...ReadingName[]];
const METERS = Object.keys(METER_OHMS) as [Meter, ...Meter[]];
const MOST_CHARACTERS = 100_000;

function measure(unit: "V" | "A", most: number) {
  const message = `write ${unit === "V" ? "volts" : "amperes"} as a number or with its unit, for example ${unit === "V" ? '122.4 or "122.4 V"' : '12.5 or "12.5 A"'}`;
  return z.union([z.number(), z.string()], { error: message }).transform((given, context) => {
    const [, numeral] = typeof given === "number" ? ["", String(given)] : (new RegExp(`^\\s*(\\d+(?:\\.\\d+)?)\\s*${unit}?\\s*$`).exec(given) ?? []);
    const value = numeral === undefined ? Number.NaN : Number(numeral);
    if (Number.isFinite(value) && value >= 0 && value <= most) return value;
    context.addIssue({ code: "custom", message: Number.isFinite(value) ? `${given} is outside 0 to ${most} ${unit}` : message });
    return z.NEVER;
  });
}

const volts = z.partialRecord(z.enum(NAMES), measure("V", 1000));

/** Readings taken at one outlet, as written in a file or gathered on a terminal. */
export const readingsSchema = z.strictObject({
  format: z.literal("branchwork-readings/1"),
  circuit: z.string().min(1).max(40).optional().describe("id of the circuit in the job; may be left out where the job has one"),
  meter: z.enum(METERS).optional().describe("high-impedance: a usual digital meter; low-impedance: its LoZ setting"),
  idle: volts.describe("volts with the breaker on and nothing connected"),
  loaded: z
    .strictObject({ across: z.enum(NAMES), amperes: measure("A", 400).refine((a) => a > 0, { error: "a load draws more than 0 A" }), readings: volts })
    .optional()
    .describe("volts with a known load on"),
});
export type EnteredFile = z.output<typeof readingsSchema>;

export type ReadingsReading = { readonly ok: true; readonly readings: EnteredFile } | { readonly ok: false; readonly issues: readonly Issue[] };

/** Reads a file of readings (YAML text). Bad text gives issues with line and column, both from 1; nothing is thrown. */
export function readReadings(text: string): ReadingsReading {
  const lines = new LineCounter();
  const source = text.startsWith("\uFEFF") ? text.slice(1) : text;
  const issue = (offset: number, path: string, what: string, mend: string): Issue => {
    const { line, col } = lines.linePos(offset);
    return { line: Math.max(1, line), column: Math.max(1, col), path, what, mend };
  };
  const refuse = (...issues: Issue[]): ReadingsReading => ({ ok: false, issues });
  if (source.length > MOST_CHARACTERS) return refuse(issue(0, "", `longer than ${MOST_CHARACTERS} characters`, "a file of readings is a few lines"));
  const parsed = parseStrictly(source, lines);
  if (parsed === null) return refuse(issue(0, "", "the values are nested too deeply to read", "a file of readings nests three levels"));
  const { document, refused } = parsed;
  const banned = refused.map(({ offset, what, mend }) => issue(offset, "", what, mend));
  if (banned.length > 0) return refuse(...firstOf(banned));
  const root = isNode(document.contents) ? document.contents : null;
  if (!isMap(root)) return refuse(issue(0, "", "the file holds no readings", 'begin with "format: branchwork-readings/1"'));
  const result = readingsSchema.safeParse(document.toJS({ maxAliasCount: 0 }));
  if (result.success) return { ok: true, readings: result.data };
  return {
    ok: false,
    issues: result.error.issues.flatMap((found) => placed(found, root).map(({ offset, path, what, mend }) => issue(offset, path, what, mend))),
  };
}

interface Placed {
  readonly offset: number;
  readonly path: string;
  readonly what: string;
  readonly mend: string;
}

function placed(found: z.core.$ZodIssue, root: Node): readonly Placed[] {
  const path = found.path.map((step) => (typeof step === "number" ? step : String(step)));
  const name = path.join(".") || "the file";
  const at = (keys: readonly (string | number)[], atKey: boolean, what: string, mend: string): Placed => ({
    offset: offsetOf(root, keys, atKey),
    path: keys.join("."),
    what,
    mend,
  });
  if (found.code === "unrecognized_keys")
    return found.keys
      .slice(0, 50)
      .map((key) => at([...path, key], true, `"${key.slice(0, 60)}" is not a field here`, `remove it; readings are named ${NAMES.join(", ")}`));
  if (found.code === "invalid_key") return [at(path, true, `"${path.at(-1) ?? ""}" is not a reading`, `name it one of ${NAMES.join(", ")}`)];
  if (found.code === "invalid_value") return [at(path, false, `${name} is not one of the choices`, `write one of ${found.values.map(String).join(", ")}`)];
  if (found.code === "invalid_type")
    return [
      at(
        path,
        false,
        `${name} is missing or of the wrong kind`,
        `give it as ${found.expected === "object" || found.expected === "record" ? "a group of readings" : found.expected}`,
      ),
    ];
  return [at(path, false, `${name}: ${found.message}`, found.message.startsWith("write ") ? found.message : "correct the value")];
}
