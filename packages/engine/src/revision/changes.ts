import type { Design } from "../designed.js";
import { decimal, print } from "../quantity.js";
import type { Worked } from "../worked.js";

/** One thing that is otherwise now; null where it was not there, or is not there any more. */
export interface Change {
  readonly kind: "input" | "worked" | "finding";
  /** Path in the job, id of the worked value, or check and subject. */
  readonly id: string;
  readonly says: string;
  readonly was: string | null;
  readonly now: string | null;
}

/** What is otherwise in a later design of the same job: inputs as entered, worked values, findings. */
export function changesBetween(was: Design, now: Design): readonly Change[] {
  return [
    ...compared("input", inputsOf(was), inputsOf(now)),
    ...compared("worked", workedOf(was), workedOf(now)),
    ...compared("finding", findingsOf(was), findingsOf(now)),
  ];
}

type Sayings = ReadonlyMap<string, { readonly says: string; readonly value: string }>;

function compared(kind: Change["kind"], was: Sayings, now: Sayings): readonly Change[] {
  return [...new Set([...was.keys(), ...now.keys()])].flatMap((id): readonly Change[] => {
    const [before, after] = [was.get(id), now.get(id)];
    if (before?.value === after?.value) return [];
    return [{ kind, id, says: (after ?? before)!.says, was: before?.value ?? null, now: after?.value ?? null }];
  });
}

const isGroup = (value: unknown): value is Readonly<Record<string, unknown>> => typeof value === "object" && value !== null && !Array.isArray(value);

/** Every leaf of the job by its path; what has an id or a name in a list goes by that, so that one more entry moves no other. */
function inputsOf({ job, edition }: Design): Sayings {
  const leaves = new Map<string, { readonly says: string; readonly value: string }>();
  const walk = (value: unknown, path: string): void => {
    if (value === undefined) return;
    if (Array.isArray(value)) {
      const keys = value.map((entry, i) => (isGroup(entry) && typeof (entry.id ?? entry.name) === "string" ? String(entry.id ?? entry.name) : String(i + 1)));
      if (value.every((entry) => typeof entry !== "object")) leaves.set(path, { says: path, value: `[${value.join(", ")}]` });
      else for (const [i, entry] of value.entries()) walk(entry, `${path}[${keys.indexOf(keys[i]!) === i ? keys[i]! : `${keys[i]} ${i + 1}`}]`);
    } else if (isGroup(value)) for (const [key, inner] of Object.entries(value)) walk(inner, path === "" ? key : `${path}.${key}`);
    else leaves.set(path, { says: path, value: String(value) });
  };
  walk(job, "");
  leaves.set("code.edition", { says: "code.edition", value: edition });
  return leaves;
}

const isWorked = (value: Readonly<Record<string, unknown>>): value is Readonly<Record<string, unknown>> & Worked =>
  typeof value.id === "string" && typeof value.label === "string" && typeof value.expression === "string" && typeof value.unit === "string";

function workedOf({ service, feeders, circuits }: Design): Sayings {
  const values = new Map<string, { readonly says: string; readonly value: string }>();
  const walk = (value: unknown): void => {
    if (Array.isArray(value)) for (const entry of value) walk(entry);
    else if (isGroup(value)) {
      if (isWorked(value)) values.set(value.id, { says: value.label, value: printed(value) });
      else for (const inner of Object.values(value)) walk(inner);
    }
  };
  walk([service, feeders, circuits]);
  return values;
}

const NUMERAL = /^-?\d+(\.\d+)?$/;

/** Five figures: what differs only beyond them is no change to anybody. */
function printed({ value, unit }: Worked): string {
  const figures = NUMERAL.test(value) ? print(decimal(value).toSignificantDigits(5), 6) : value;
  return unit === "text" || unit === "count" || unit === "factor" ? figures : `${figures} ${unit}`;
}

function findingsOf({ findings }: Design): Sayings {
  return new Map(
    findings.map((finding) => [
      `${finding.check}: ${finding.subject}`,
      { says: `${finding.title}: ${finding.subject}`, value: `${finding.verdict}: ${finding.says}` },
    ]),
  );
}
