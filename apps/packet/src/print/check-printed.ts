import { EnvironmentError } from "./environment-error.js";
import { inspectPdf } from "./inspect-pdf.js";
import { openPdf } from "./pdf-file.js";
import { boxed, printedText } from "./pdf-text.js";
import { MissingGlyphError, PrintError } from "./print-error.js";

/**
 * Checks a printed PDF by what is drawn on its pages: `expectText` stands there (white space and case aside), every character
 * had a glyph, links inside it lead somewhere, it is tagged and names its title and language. Throws PrintError, or
 * EnvironmentError when the browser had no font at all.
 */
export function checkPrinted(pdf: Uint8Array, expectText: string): void {
  const file = openPdf(pdf);
  const facts = inspectPdf(file);
  if (facts.pages === 0) throw new PrintError("the browser wrote a PDF without pages");
  if (facts.embeddedFonts === 0) {
    throw new EnvironmentError("the browser printed no text: it found no font at all", {
      hint: "install a font package (on Debian: apt install fontconfig fonts-dejavu-core) or use the bundled browser",
    });
  }
  const pages = printedText(file);
  for (const [index, text] of pages.entries()) {
    const line = text.split("\n").find((drawn) => drawn.includes(boxed));
    if (line !== undefined)
      throw new MissingGlyphError(
        `no font has a glyph for a character on page ${index + 1}, near "${line.trim().slice(0, 60)}": it would print as an empty box`,
      );
  }
  const drawn = bare(pages.join(""));
  if (!(RIGHT_TO_LEFT.test(expectText) ? expectText.split(/\s+/).every((word) => standsEitherWay(word, drawn)) : drawn.includes(bare(expectText))))
    throw new PrintError(`the printed pages lack the text "${expectText}"`);
  if (facts.title.trim() === "") throw new PrintError("the document has no title");
  if (facts.language === "") throw new PrintError("the browser wrote a PDF without a language");
  if (!facts.tagged) throw new PrintError("the browser wrote a PDF without tags");
  const astray = facts.links.find(({ toPage, address }) => toPage === undefined && !address);
  if (astray) throw new PrintError(`a link on page ${astray.page} leads nowhere${astray.place === undefined ? "" : `: there is no "${astray.place}"`}`);
}

// Hebrew, Arabic and the like stand on the page from right to left, and are read from it from left to right; so do words among them.
const RIGHT_TO_LEFT = /[\p{Script=Hebrew}\p{Script=Arabic}\p{Script=Syriac}\p{Script=Thaana}\p{Script=Nko}]/u;
const standsEitherWay = (word: string, drawn: string) => drawn.includes(bare(word)) || drawn.includes(bare([...word].reverse().join("")));

// Upper-casing is styling, and lines break anywhere: neither is a difference in what stands on the page.
function bare(text: string): string {
  return text
    .normalize("NFKC")
    .toLocaleLowerCase("en")
    .replace(/[\s\u00ad\u200b-\u200d\u2060\ufeff]/g, "");
}
