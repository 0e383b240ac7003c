/** Where something stands: file, and line and column counted from 1. */
export interface Place {
  readonly file: string;
  readonly line: number;
  readonly column: number;
}

/** A value as written, with the place of every part of it. */
export type Placed = Place &
  (
    | { readonly kind: "leaf"; readonly value: unknown }
    | { readonly kind: "list"; readonly items: readonly Placed[] }
    | { readonly kind: "group"; readonly fields: Readonly<Record<string, Placed>> }
  );
export type PlacedGroup = Extract<Placed, { kind: "group" }>;

export type Path = readonly (string | number)[];

export const isGroup = (value: unknown): value is Readonly<Record<string, unknown>> => typeof value === "object" && value !== null && !Array.isArray(value);

/** A plain value with the place of each part, as `locate` finds it. */
export function placeAll(value: unknown, path: Path, locate: (path: Path) => Place): Placed {
  const at = locate(path);
  if (Array.isArray(value)) return { ...at, kind: "list", items: value.map((item, i) => placeAll(item, [...path, i], locate)) };
  if (isGroup(value))
    return { ...at, kind: "group", fields: Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, placeAll(inner, [...path, key], locate)])) };
  return { ...at, kind: "leaf", value };
}

/** The plain value again. */
export function plainOf(placed: Placed): unknown {
  switch (placed.kind) {
    case "leaf":
      return placed.value;
    case "list":
      return placed.items.map(plainOf);
    default:
      return Object.fromEntries(Object.entries(placed.fields).map(([key, inner]) => [key, plainOf(inner)]));
  }
}

/** The part at a path; where it is missing, the nearest part that holds it. */
export function nearest(placed: Placed, path: Path): Placed {
  const [step, ...rest] = path;
  if (step === undefined) return placed;
  const next =
    placed.kind === "list" ? placed.items[Number(step)] : placed.kind === "group" && Object.hasOwn(placed.fields, step) ? placed.fields[step] : undefined;
  return next === undefined ? placed : nearest(next, rest);
}

/** The id of a list's entry, when it has one. */
export function idOf(placed: Placed): string | null {
  const id = placed.kind === "group" ? placed.fields.id : undefined;
  return id?.kind === "leaf" && typeof id.value === "string" ? id.value : null;
}

/** Every leaf with its path, an entry of a list by its id where it has one. */
export function leavesOf(placed: Placed, path: string = ""): readonly (Place & { readonly path: string; readonly value: unknown })[] {
  const below = (step: string) => (path === "" ? step : `${path}.${step}`);
  switch (placed.kind) {
    case "leaf":
      return [{ path, value: placed.value, file: placed.file, line: placed.line, column: placed.column }];
    case "list":
      return placed.items.flatMap((item, i) => leavesOf(item, below(idOf(item) ?? String(i))));
    default:
      return Object.entries(placed.fields).flatMap(([key, inner]) => leavesOf(inner, below(key)));
  }
}
