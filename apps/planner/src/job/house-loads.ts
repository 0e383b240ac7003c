import { at, type Edit, listAt, type Path, printPath, textAt } from "./document.js";

export const EXISTING: Path = ["service", "existing"];
export const DWELLING: Path = ["service", "dwelling"];
type Method = "existing-dwelling" | "measured-demand" | "standard" | "optional";

/** The list of the whole house to which an appliance belongs by what it is called; the general one where the name tells nothing. */
const LIST_OF: readonly (readonly [RegExp, string])[] = [
  [/\b(range|oven|cooktop|stove)\b/i, "cooking"],
  [/\bdryer\b/i, "dryers"],
  [/\b(ev|car charger|electric vehicle)\b/i, "ev"],
];
const listOf = (name: string): string => LIST_OF.find(([named]) => named.test(name))?.[1] ?? "appliances";

/** Puts a method of the load with the part of the job it needs; what was told for another method is carried over. */
export function methodChosen(plain: unknown, method: Method | undefined, assumed: readonly string[]): readonly Edit[] {
  const edits: Edit[] = [{ at: ["service", "load_method"], put: method }];
  const there = (path: Path) => at(plain, path) !== undefined;
  const whole = (path: Path) => there([...path, "floor_area"]);
  if (method === "standard" || method === "optional") {
    if (!there(DWELLING)) edits.push(...carriedOver(plain, assumed));
    // What only the method of the existing house can tell stays for it.
    if (there(EXISTING) && !(whole(EXISTING) && at(plain, [...EXISTING, "heating_or_cooling_added"]) === true)) edits.push({ remove: EXISTING });
    return edits;
  }
  if (method === "existing-dwelling") {
    if (!there(EXISTING) && !there(DWELLING)) edits.push({ at: EXISTING, put: { appliances: [] } });
    if (there(EXISTING) && there(DWELLING) && !whole(DWELLING)) edits.push({ remove: DWELLING });
    return edits;
  }
  // A house added up without its area could not be read.
  for (const path of [EXISTING, DWELLING]) if (there(path) && !whole(path)) edits.push({ remove: path });
  return edits;
}

function carriedOver(plain: unknown, assumed: readonly string[]): readonly Edit[] {
  const lists = { appliances: [] as unknown[], cooking: [] as unknown[], dryers: [] as unknown[], ev: [] as unknown[], climate: [] as unknown[] };
  const marks: Edit[] = [];
  const mark = (from: Path, to: Path) => {
    if (assumed.includes(printPath(from))) marks.push({ at: to, put: at(plain, from), assumed: true });
  };
  for (const [i, row] of listAt(plain, [...EXISTING, "appliances"]).entries()) {
    const name = listOf(textAt(row, ["name"])) as keyof typeof lists;
    mark([...EXISTING, "appliances", i, "load"], [...DWELLING, name, lists[name].length, "load"]);
    lists[name].push(row);
  }
  for (const [part, kind] of [
    ["heating", "space-heating"],
    ["cooling", "cooling"],
  ] as const) {
    const row = at(plain, [...EXISTING, part]);
    if (typeof row !== "object" || row === null) continue;
    mark([...EXISTING, part, "load"], [...DWELLING, "climate", lists.climate.length, "load"]);
    lists.climate.push({ ...row, kind });
  }
  const scalars = ["floor_area", "small_appliance_circuits", "laundry_circuits"].flatMap((key) => {
    const value = at(plain, [...EXISTING, key]);
    mark([...EXISTING, key], [...DWELLING, key]);
    return value === undefined ? [] : [[key, value] as const];
  });
  return [
    { at: DWELLING, put: { ...Object.fromEntries(scalars), ...Object.fromEntries(Object.entries(lists).filter(([, rows]) => rows.length > 0)) } },
    ...marks,
  ];
}
