import { parseStrictly } from "@branchwork/engine";
import { type Fonts, fontFaces } from "@branchwork/sheets";
import { InputError, type NamedText } from "./load-design.js";
import { MissingGlyphError } from "./print/print-error.js";

/** What every font at hand draws. */
const DRAWN = /[\t\n\r -~\u00a0-\u00ff]/u;
const MOST_TOLD = 10;

/**
 * Bad input in place of a print that lacked a glyph: each field of the texts with a character that no font draws, by file, line and
 * column. `print` is asked for the characters one by one. The error itself where no text has one, for then it is no fault of theirs.
 */
export async function undrawnIn(given: {
  readonly texts: readonly NamedText[];
  readonly error: MissingGlyphError;
  readonly fonts: Fonts;
  readonly print: (html: string, expectText: string) => Promise<unknown>;
}): Promise<Error> {
  const written = given.texts.flatMap(({ file, text }) => fieldsOf(text).map((field) => ({ ...field, file, text })));
  const undrawn = new Set<string>();
  const tried = new Set<string>();
  const told: { readonly at: (typeof written)[number]; readonly letter: string }[] = [];
  for (const at of written)
    for (const letter of new Set(at.value)) {
      if (DRAWN.test(letter) || told.length >= MOST_TOLD || (!tried.has(letter) && tried.size >= MOST_TRIED)) continue;
      if (!tried.has(letter) && !(await isDrawn(letter, given))) undrawn.add(letter);
      tried.add(letter);
      if (undrawn.has(letter)) told.push({ at, letter });
    }
  const [first] = told;
  if (first === undefined) return given.error;
  return new InputError(
    first.at.file,
    told.map(({ at, letter }) => ({
      file: at.file,
      ...placeOf(at.text, at.offset),
      path: at.path,
      what: `no font here draws "${letter}" (U+${letter.codePointAt(0)!.toString(16).toUpperCase().padStart(4, "0")}): it would print as an empty box`,
      mend: "write it in letters the fonts have, or install a font that has it",
    })),
  );
}

const MOST_TRIED = 40;

async function isDrawn(letter: string, { fonts, print }: Pick<Parameters<typeof undrawnIn>[0], "fonts" | "print">): Promise<boolean> {
  const style = `${fontFaces(fonts)}\np { font-family: "Packet", sans-serif; }`;
  const says = "Letter";
  try {
    await print(
      `<!doctype html><html lang="en"><head><title>${says}</title><style>${style}</style></head><body><p>${says} &#${letter.codePointAt(0)};</p></body></html>`,
      says,
    );
    return true;
  } catch (error) {
    if (error instanceof MissingGlyphError) return false;
    throw error;
  }
}

interface Field {
  readonly path: string;
  readonly value: string;
  readonly offset: number;
}

/** A YAML node as far as it is looked at here. */
interface Node {
  readonly range?: readonly number[] | null;
  readonly value?: unknown;
  readonly items?: readonly (Node & { readonly key?: Node })[];
}

/** Every text of a YAML file, comments left out. */
function fieldsOf(source: string): readonly Field[] {
  const text = source.startsWith("\uFEFF") ? source.slice(1) : source;
  const parsed = parseStrictly(text, undefined as never);
  if (parsed === null || parsed.refused.length > 0) return [];
  const found: Field[] = [];
  const walk = (node: Node | null | undefined, path: string): void => {
    if (node === null || node === undefined) return;
    if (typeof node.value === "string") found.push({ path, value: node.value, offset: (node.range?.[0] ?? 0) + (source.length - text.length) });
    node.items?.forEach((item, i) => {
      if (item.key === undefined) walk(item, `${path}[${i}]`);
      else walk(item.value as Node | null, `${path === "" ? "" : `${path}.`}${String(item.key.value)}`);
    });
  };
  walk(parsed.document.contents as Node | null, "");
  return found;
}

function placeOf(text: string, offset: number): { readonly line: number; readonly column: number } {
  const before = text
    .slice(0, offset)
    .replace(/^\uFEFF/, "")
    .split("\n");
  return { line: before.length, column: (before.at(-1) ?? "").length + 1 };
}
