import { access } from "node:fs/promises";
import { basename, dirname, extname, join } from "node:path";
import type { Edition } from "@branchwork/engine";
import { basisFrom, type FiledIssue, type Flattening, flattenOverlay, nearest, readOverlay } from "@branchwork/sheets";
import { InputError, type NamedText, readText } from "../load-design.js";

export type LoadedOverlay = Extract<Flattening, { ok: true }>;

const EDITION_TO_TRY: Edition = "2023";

/** An overlay with all it extends, from files of one folder; every issue of any of them, or the whole. */
export async function loadOverlay(
  file: string,
): Promise<{ readonly ok: true; readonly loaded: LoadedOverlay } | { readonly ok: false; readonly issues: readonly FiledIssue[] }> {
  const { texts, files, name } = await chainOf(file);
  const named = (issue: FiledIssue): FiledIssue => ({ ...issue, file: files[issue.file] ?? issue.file });
  const result = flattenOverlay(name, texts);
  if (!result.ok) return { ok: false, issues: result.issues.map(named) };
  const { overlay, placed } = result;
  const issues = basisFrom(overlay, overlay.edition ?? EDITION_TO_TRY).issues.map((issue): FiledIssue => {
    const { file: where, line, column } = nearest(placed, issue.path.split("."));
    return named({ ...issue, file: where, line, column });
  });
  return issues.length > 0 ? { ok: false, issues } : { ok: true, loaded: { ...result, files: result.files.map((each) => files[each] ?? each) } };
}

/** The same, with its issues as bad input. */
export async function overlayOrThrow(file: string): Promise<LoadedOverlay> {
  const result = await loadOverlay(file);
  if (!result.ok) throw new InputError(file, result.issues);
  return result.loaded;
}

/** The text of an overlay that needs no other file: as it stands, or with what it extends written out as JSON, which is YAML. */
export async function selfContained(file: string): Promise<NamedText> {
  const text = await readText(file);
  const reading = readOverlay(text);
  if (!reading.ok || reading.overlay.extends === undefined) return { file, text };
  const { overlay } = await overlayOrThrow(file);
  const { changes: _changes, extends: _extends, ...rest } = overlay;
  return { file, text: `${JSON.stringify(rest, null, 2)}\n` };
}

/** The file's text and those it extends, by the names they go by, as far as they are there. */
async function chainOf(file: string): Promise<{ readonly name: string; readonly texts: Record<string, string>; readonly files: Record<string, string> }> {
  const name = basename(file, extname(file));
  const texts: Record<string, string> = { [name]: await readText(file) };
  const files: Record<string, string> = { [name]: file };
  let last = name;
  for (;;) {
    const reading = readOverlay(texts[last] ?? "");
    const parent = reading.ok ? reading.overlay.extends : undefined;
    if (parent === undefined || Object.hasOwn(texts, parent)) break;
    const path = join(dirname(file), `${parent}.yaml`);
    const there = await access(path).then(
      () => true,
      () => false,
    );
    if (!there) break;
    texts[parent] = await readText(path);
    files[parent] = path;
    last = parent;
  }
  return { name, texts, files };
}
