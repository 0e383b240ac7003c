import { idOf, type Placed, type PlacedGroup, plainOf } from "./placed.js";
import type { Change } from "./schema.js";

export type Changed =
  | { readonly ok: true; readonly placed: PlacedGroup }
  | { readonly ok: false; readonly atBase: boolean; readonly what: string; readonly mend: string };

/** One change of an extended file. The entry it falls in takes the change's citation and date; a wrong base value changes nothing. */
export function applyChange(placed: PlacedGroup, change: Change, value: Placed): Changed {
  const steps = change.at.split(".");
  const target = find(placed, steps);
  if (target === null) return { ok: false, atBase: false, what: `there is no "${change.at}" in the extended file`, mend: `name one of ${near(placed, steps)}` };
  if (change.op === "remove") {
    if (target.kind === "leaf")
      return { ok: false, atBase: false, what: `"${change.at}" is one field`, mend: "remove the entry that holds it, or replace the field" };
    return { ok: true, placed: rewrite(placed, steps, () => null, null) as PlacedGroup };
  }
  if (target.kind !== "leaf")
    return { ok: false, atBase: false, what: `"${change.at}" holds several fields`, mend: `name one of ${near(placed, [...steps, ""])}` };
  if (target.value !== change.replaces)
    return {
      ok: false,
      atBase: true,
      what: `"${change.at}" is ${JSON.stringify(plainOf(target))} in ${target.file}, line ${target.line}, not ${JSON.stringify(change.replaces)}`,
      mend: "compare both files with the jurisdiction's words and give the value that stands there",
    };
  const leaf = (of: string): Placed => ({ file: value.file, line: value.line, column: value.column, kind: "leaf", value: of });
  const source = { citation: leaf(change.citation), ...(change.checked_on === undefined ? {} : { checked_on: leaf(change.checked_on) }) };
  return { ok: true, placed: rewrite(placed, steps, () => value, source) as PlacedGroup };
}

function keyOf(placed: Placed, step: string): string | number | null {
  if (placed.kind === "group") return Object.hasOwn(placed.fields, step) ? step : null;
  if (placed.kind !== "list") return null;
  const byName = placed.items.findIndex((item) => nameOf(item) === step);
  return byName >= 0 ? byName : null;
}

/** The name a change gives an entry of a list: its id; an amendment of a check without one goes by its check. */
function nameOf(item: Placed): string | null {
  const check = item.kind === "group" ? item.fields.check : undefined;
  return idOf(item) ?? (check?.kind === "leaf" && typeof check.value === "string" ? check.value : null);
}

const child = (placed: Placed, key: string | number): Placed | undefined =>
  placed.kind === "group" ? placed.fields[key] : placed.kind === "list" ? placed.items[Number(key)] : undefined;

function find(placed: Placed, steps: readonly string[]): Placed | null {
  const [step, ...rest] = steps;
  if (step === undefined) return placed;
  const key = keyOf(placed, step);
  const next = key === null ? undefined : child(placed, key);
  return next === undefined ? null : find(next, rest);
}

/** The names beside the first step that leads nowhere. */
function near(placed: Placed, steps: readonly string[]): string {
  const [step = "", ...rest] = steps;
  const key = keyOf(placed, step);
  const next = key === null ? undefined : child(placed, key);
  if (next !== undefined) return near(next, rest);
  const names = placed.kind === "group" ? Object.keys(placed.fields) : placed.kind === "list" ? placed.items.flatMap((item) => nameOf(item) ?? []) : [];
  return names.length > 0 ? names.join(", ") : "the fields it has (entries without an id cannot be named: give them one)";
}

/** The tree with the part at `steps` made anew; null takes it out. Groups with a citation on the way take `source`. */
function rewrite(placed: Placed, steps: readonly string[], make: () => Placed | null, source: Readonly<Record<string, Placed>> | null): Placed | null {
  const [step, ...rest] = steps;
  if (step === undefined) return make();
  const key = keyOf(placed, step);
  const old = key === null ? undefined : child(placed, key);
  if (key === null || old === undefined) return placed;
  const made = rewrite(old, rest, make, source);
  if (placed.kind === "list") return { ...placed, items: placed.items.flatMap((item, i) => (i === key ? (made === null ? [] : [made]) : [item])) };
  if (placed.kind !== "group") return placed;
  const fields = Object.fromEntries(
    Object.entries(placed.fields).flatMap(([name, part]) => (name === key ? (made === null ? [] : [[name, made]]) : [[name, part]])),
  );
  return { ...placed, fields: source !== null && Object.hasOwn(fields, "citation") && !Object.hasOwn(source, String(key)) ? { ...fields, ...source } : fields };
}
