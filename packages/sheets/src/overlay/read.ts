import { firstOf, offsetOf, type Problem, parseStrictly, problemsOf } from "@branchwork/engine";
import { isMap, isNode, LineCounter } from "yaml";
import { type Place, type PlacedGroup, placeAll } from "./placed.js";
import { type Overlay, overlaySchema } from "./schema.js";

export interface OverlayIssue {
  readonly line: number;
  readonly column: number;
  readonly path: string;
  readonly what: string;
  readonly mend: string;
}
export type OverlayReading =
  | { readonly ok: true; readonly overlay: Overlay; readonly placed: PlacedGroup }
  | { readonly ok: false; readonly issues: readonly OverlayIssue[] };

const MAX_CHARACTERS = 300_000;

/**
 * Reads one overlay file (YAML text), without what it extends. Every issue names the line and column it stands on, both
 * counted from 1; nothing is thrown for bad text. `file` is the name under which places are given.
 */
export function readOverlay(text: string, file = ""): OverlayReading {
  const source = text.startsWith("\uFEFF") ? text.slice(1) : text;
  const lines = new LineCounter();
  const at = (offset: number) => {
    const { line, col } = lines.linePos(offset);
    return { line: Math.max(1, line), column: Math.max(1, col) };
  };
  const refuse = (...issues: OverlayIssue[]): OverlayReading => ({ ok: false, issues });
  if (source.length > MAX_CHARACTERS)
    return refuse({ ...at(0), path: "", what: `longer than ${MAX_CHARACTERS} characters`, mend: "an overlay is a few kilobytes; check that this is one" });
  const parsed = parseStrictly(source, lines);
  if (parsed === null) return refuse({ ...at(0), path: "", what: "the values are nested too deeply to read", mend: "an overlay nests fewer than ten levels" });
  const { document, refused } = parsed;
  const banned = refused.map(({ offset, what, mend }) => ({ ...at(offset), path: "", what, mend }));
  if (banned.length > 0) return refuse(...firstOf(banned));
  const root = isNode(document.contents) ? document.contents : null;
  if (!isMap(root)) return refuse({ ...at(0), path: "", what: "the file holds no overlay", mend: 'begin with "format: branchwork-overlay/1"' });
  const plain: unknown = document.toJS({ maxAliasCount: 0 });
  const result = overlaySchema.safeParse(plain);
  if (!result.success) {
    const placed = ({ path, atKey, what, mend }: Problem): OverlayIssue => ({ ...at(offsetOf(root, path, atKey)), path: path.join("."), what, mend });
    return { ok: false, issues: firstOf(inOrder(problemsOf(result.error.issues, plain, overlaySchema).map(placed))) };
  }
  const locate = (path: readonly (string | number)[]): Place => ({ file, ...at(offsetOf(root, path, false)) });
  return { ok: true, overlay: result.data, placed: placeAll(plain, [], locate) as PlacedGroup };
}

const inOrder = (issues: readonly OverlayIssue[]) => [...issues].sort((a, b) => a.line - b.line || a.column - b.column);
