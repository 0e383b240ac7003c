import { problemsOf } from "@branchwork/engine";
import { applyChange } from "./change.js";
import { idOf, nearest, type Placed, type PlacedGroup, plainOf } from "./placed.js";
import { type OverlayIssue, readOverlay } from "./read.js";
import { type Overlay, overlaySchema } from "./schema.js";

export interface FiledIssue extends OverlayIssue {
  readonly file: string;
}
export type Flattening =
  | { readonly ok: true; readonly overlay: Overlay; readonly placed: PlacedGroup; readonly files: readonly string[] }
  | { readonly ok: false; readonly issues: readonly FiledIssue[] };

/** What a file says of itself and does not hand down. */
const OWN = ["format", "id", "name", "extends", "checked_on", "changes"];

/**
 * The overlay with what it extends, as one. Lists are added to; a group or figure that both files give is an issue unless a
 * change names it with the value it replaces. Every entry carries its own checked_on afterwards.
 *
 * @param texts file texts by name, the name being what `extends` says
 */
export function flattenOverlay(name: string, texts: Readonly<Record<string, string>>): Flattening {
  const result = flat(name, texts, []);
  if (!result.ok) return result;
  const plain = plainOf(result.placed);
  const parsed = overlaySchema.safeParse(plain);
  if (parsed.success) return { ...result, overlay: parsed.data };
  return {
    ok: false,
    issues: problemsOf(parsed.error.issues, plain, overlaySchema).map(({ path, what, mend }) =>
      issueAt(nearest(result.placed, path), path.join("."), what, mend),
    ),
  };
}

export const issueAt = ({ file, line, column }: Placed, path: string, what: string, mend: string): FiledIssue => ({ file, line, column, path, what, mend });

function flat(name: string, texts: Readonly<Record<string, string>>, above: readonly string[]): Flattening {
  const text = Object.hasOwn(texts, name) ? texts[name] : undefined;
  if (text === undefined) throw new RangeError(`no text for overlay ${name}`);
  const reading = readOverlay(text, name);
  if (!reading.ok) return { ok: false, issues: reading.issues.map((issue) => ({ file: name, ...issue })) };
  const own = dated(reading.placed, reading.overlay.checked_on);
  const parent = reading.overlay.extends;
  if (parent === undefined) {
    const [first] = reading.overlay.changes;
    if (first !== undefined)
      return {
        ok: false,
        issues: [
          issueAt(
            nearest(own, ["changes", 0]),
            "changes",
            `"${first.at}" is changed, but the file extends none`,
            "add extends, or write the value where it belongs",
          ),
        ],
      };
    const twice = idsTwice(own);
    return twice.length > 0 ? { ok: false, issues: twice } : { ok: true, overlay: reading.overlay, placed: own, files: [name] };
  }
  const at = nearest(own, ["extends"]);
  if ([...above, name].includes(parent)) {
    const round = [...above, name, parent].join(" → ");
    return { ok: false, issues: [issueAt(at, "extends", `the files extend one another in a circle: ${round}`, "let the last of them extend none")] };
  }
  if (!Object.hasOwn(texts, parent))
    return {
      ok: false,
      issues: [issueAt(at, "extends", `there is no overlay "${parent}" beside this file`, `put ${parent}.yaml in the same folder, or correct the name`)],
    };
  const base = flat(parent, texts, [...above, name]);
  if (!base.ok) return base;
  const issues: FiledIssue[] = [];
  const { placed: changed, issues: wrong } = applyChanges(base.placed, own, reading.overlay);
  issues.push(...wrong);
  const joined = join(changed, own);
  issues.push(...joined.issues, ...idsTwice(joined.placed));
  return issues.length > 0 ? { ok: false, issues } : { ok: true, overlay: reading.overlay, placed: joined.placed, files: [name, ...base.files] };
}

function applyChanges(
  base: PlacedGroup,
  own: PlacedGroup,
  { changes, checked_on }: Overlay,
): { readonly placed: PlacedGroup; readonly issues: readonly FiledIssue[] } {
  const issues: FiledIssue[] = [];
  const done: string[] = [];
  let placed = base;
  for (const [i, change] of changes.entries()) {
    const where = nearest(own, ["changes", i, "at"]);
    const same = done.find((at) => at === change.at || at.startsWith(`${change.at}.`) || change.at.startsWith(`${at}.`));
    if (same !== undefined) {
      issues.push(
        issueAt(
          where,
          `changes.${i}.at`,
          same === change.at ? `"${change.at}" is changed twice` : `"${same}" and "${change.at}" change the same thing`,
          "keep one of the two",
        ),
      );
      continue;
    }
    done.push(change.at);
    if (OWN.includes(change.at.split(".")[0] ?? "")) {
      issues.push(issueAt(where, `changes.${i}.at`, `"${change.at}" is the extended file's own and is not handed down`, "write it in this file"));
      continue;
    }
    const made = applyChange(placed, { ...change, checked_on: change.checked_on ?? checked_on }, nearest(own, ["changes", i, "value"]));
    if (made.ok) placed = made.placed;
    else issues.push(issueAt(made.atBase ? nearest(own, ["changes", i, "replaces"]) : where, `changes.${i}`, made.what, made.mend));
  }
  return { placed, issues };
}

/** The extended file's fields with this file's: lists one after the other, all else once. */
function join(base: PlacedGroup, own: PlacedGroup): { readonly placed: PlacedGroup; readonly issues: readonly FiledIssue[] } {
  const issues: FiledIssue[] = [];
  const fields: Record<string, Placed> = Object.fromEntries(Object.entries(base.fields).filter(([key]) => !OWN.includes(key)));
  for (const [key, mine] of Object.entries(own.fields)) {
    if (key === "changes" || key === "extends") continue;
    const theirs = fields[key];
    if (theirs?.kind === "list" && mine.kind === "list") fields[key] = { ...mine, items: [...theirs.items, ...mine.items] };
    else if (theirs !== undefined && JSON.stringify(plainOf(theirs)) !== JSON.stringify(plainOf(mine)))
      issues.push(
        issueAt(
          mine,
          key,
          `"${key}" stands already in ${theirs.file}, line ${theirs.line}`,
          `name what differs under changes, as: at: ${key}, with the value it replaces`,
        ),
      );
    else fields[key] = mine;
  }
  return { placed: { ...own, fields }, issues };
}

/** The same with the file's checked_on written into every entry and group that has none of its own. */
function dated(placed: PlacedGroup, checkedOn: string): PlacedGroup {
  const date = placed.fields.checked_on ?? placed;
  const mark = (part: Placed): Placed =>
    part.kind === "group" && !Object.hasOwn(part.fields, "checked_on")
      ? { ...part, fields: { ...part.fields, checked_on: { file: date.file, line: date.line, column: date.column, kind: "leaf", value: checkedOn } } }
      : part;
  const fields = Object.fromEntries(
    Object.entries(placed.fields).map(([key, part]) => [
      key,
      key === "changes" ? part : part.kind === "list" ? { ...part, items: part.items.map(mark) } : mark(part),
    ]),
  );
  return { ...placed, fields };
}

function idsTwice(placed: PlacedGroup): readonly FiledIssue[] {
  return Object.entries(placed.fields).flatMap(([key, part]) => {
    if (part.kind !== "list") return [];
    const seen = new Set<string>();
    return part.items.flatMap((item, i) => {
      const id = idOf(item);
      if (id === null || !seen.has(id)) {
        if (id !== null) seen.add(id);
        return [];
      }
      return [
        issueAt(item, `${key}.${i}.id`, `two entries of ${key} have the id "${id}"`, "give one an id of its own, or remove the extended file's under changes"),
      ];
    });
  });
}
