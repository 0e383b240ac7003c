import { InputError, type NamedText } from "./load-design.js";
import type { MissingGlyphError } from "./print/print-error.js";

/** What the packet's own faces draw, roughly: Latin, Greek, and the marks of text. What lies outside is first under suspicion. */
const DRAWN = /[\t\n\r -~\u00a0-\u024f\u0370-\u03ff\u1e00-\u1eff\u2000-\u206f\u20ac\u2126\u2150-\u215f\u2212\u221a\u2248\u2264\u2265]/u;

/**
 * Bad input in place of a print that lacked a glyph: names each character of the texts that the packet's faces do not draw, by file,
 * line and column. The error itself where no text has one, for then it is no fault of theirs.
 */
export function undrawnIn(texts: readonly NamedText[], error: MissingGlyphError): Error {
  for (const { file, text } of texts) {
    const issues = [...text].reduce<{ line: number; column: number; found: readonly { line: number; column: number; letter: string }[] }>(
      ({ line, column, found }, letter) => {
        const next = letter === "\n" ? { line: line + 1, column: 1 } : { line, column: column + 1 };
        return { ...next, found: DRAWN.test(letter) ? found : [...found, { line, column, letter }] };
      },
      { line: 1, column: 1, found: [] },
    ).found;
    if (issues.length > 0)
      return new InputError(
        file,
        issues.slice(0, MOST_TOLD).map(({ line, column, letter }) => ({
          line,
          column,
          path: "",
          what: `no font here draws "${letter}" (U+${letter.codePointAt(0)!.toString(16).toUpperCase().padStart(4, "0")}): it would print as an empty box`,
          mend: "write it in letters the fonts have, or install a font that has it",
        })),
      );
  }
  return error;
}

const MOST_TOLD = 10;
