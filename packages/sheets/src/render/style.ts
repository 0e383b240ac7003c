import { PAPER_SIZES, type PageBox, type Paper, USUAL_STAMP } from "../compose/paper.js";

/** The page boxes of a paper. */
export function pageBoxes(paper: Paper): string {
  const { text, large } = PAPER_SIZES[paper];
  // The marks at the foot are said for each box: a named page takes nothing from the unnamed one.
  const page = (name: string, { size, margin }: PageBox) => `@page${name} { size: ${size}; margin: ${margin}; }\n`;
  return `${page("", text)}${large === null ? "" : `${page(" large", large)}:root { --large: ${large.body}; --beside: ${USUAL_STAMP.width_in}in; }\n`}`;
}

/**
 * Paged, black on white, 10 pt; the left margin leaves room for punched holes. The title block is fixed to the foot of every
 * page; each sheet's own foot is the same block unseen, and keeps the room for it. The running head repeats on each page of a sheet;
 * its heading proper stands once and unseen, for readers of the outline and of the tags.
 */
export const STYLE = `
@page {
  @bottom-left { content: "A preparer's aid: not an approval, not a seal"; font: 400 9pt "Packet", sans-serif; vertical-align: top; padding-top: 3pt; }
  @bottom-right { content: "page " counter(page) " of " counter(pages); font: 600 10pt "Packet", sans-serif; vertical-align: top; padding-top: 2pt; white-space: nowrap; }
}
* { box-sizing: border-box; }
html { font-size: 10pt; color: #000; background: #fff; }
body { margin: 0; font-family: "Packet", sans-serif; line-height: 1.25; font-variant-numeric: tabular-nums; }
.sheet + .sheet { break-before: page; }
.sheet > table { width: 7.25in; border-collapse: collapse; table-layout: fixed; }
.sheet > table > * > tr > td { padding: 0; vertical-align: top; }
/* The browser breaks before every box inside a sheet with a page of its own, but not inside its columns: one column where it needs none. */
.sheet.large { page: large; columns: 1; }
.sheet.large > table { width: var(--large); }
.sheet.twin { columns: 2; column-gap: calc(var(--large) - 14.5in); column-fill: auto; }
.sheet.twin > table { width: 7.25in; }
.plate { display: flex; justify-content: space-between; gap: 12pt; }
.plate .beside { flex: 0 0 var(--beside); }
.sheet > table > thead { display: table-header-group; break-inside: avoid; }
.sheet > table > tfoot { display: table-footer-group; break-inside: avoid; }
.sheet > table > tfoot > tr > td { padding-top: 4pt; }
.head { display: flex; gap: 12pt; align-items: baseline; margin: 0 0 5pt; border-bottom: 1.5pt solid #000; }
.head .running { font-size: 15pt; line-height: 1.2; font-weight: 700; margin: 0; min-width: 0; overflow-wrap: anywhere; }
.head .which { margin: 0 0 0 auto; white-space: nowrap; font-weight: 600; }
h1 { position: absolute; z-index: -1; margin: 0; font-size: 8pt; line-height: 1; color: #fff; white-space: nowrap; max-width: 7in; overflow: hidden; }
h2 { font-size: 11.5pt; margin: 7pt 0 3pt; break-after: avoid; overflow-wrap: anywhere; }
p { margin: 0 0 5pt; overflow-wrap: anywhere; orphans: 2; widows: 2; }
/* The browser repeats no head or foot taller than a quarter of the page, and prints over it instead: three lines at most. */
.cut { display: -webkit-box; -webkit-box-orient: vertical; -webkit-line-clamp: 3; overflow: hidden; overflow-wrap: anywhere; }
.nb { white-space: nowrap; }
.fr { font-variant-numeric: diagonal-fractions tabular-nums; }
.flow > :last-child, .together > :last-child { margin-bottom: 0; }
.together { break-inside: avoid; }
.together.abreast { display: flex; gap: 0.25in; }
.together.abreast > * { flex: 0 0 3.5in; }
.together:has(> .blanks:last-child) { margin-bottom: 6pt; }
/*
 * No page holds a remnant alone: the end of a sheet keeps with what goes before it, and the last rows and entries keep together.
 * The browser breaks inside a box that avoids it sooner than it looks further up for a better place: so each part avoids a break before it.
 */
.flow > :nth-last-child(-n+2):not(:nth-child(-n+2), .tail, .drawing, :has(> .drawing), .together:nth-last-child(2)), .flow > p:nth-last-child(-n+3):has(+ :is(p, .blanks)) { break-before: avoid; }
.flow > p:nth-last-child(-n+3), .flow > .together:last-child > p { orphans: 9; widows: 9; }
.flow > .together:last-child:not(:has(.drawing)) { break-inside: auto; }
.flow > .together:last-child:not(:has(.drawing)) > * + * { break-before: avoid; }
.flow > table.grid:nth-last-child(-n+2) > tbody > tr:nth-last-child(-n+5) { break-before: avoid; }
.flow > .brief:not(.run):nth-last-child(-n+2) > li:nth-last-child(-n+8), .boxed li:nth-last-child(-n+4) { break-before: avoid; }
table.grid { width: 100%; table-layout: fixed; border-collapse: collapse; margin: 0 0 7pt; }
.caption { font-size: 10.5pt; font-weight: 600; margin: 5pt 0 2pt; break-after: avoid; overflow-wrap: anywhere; }
table.grid thead { display: table-header-group; break-inside: avoid; break-after: avoid; }
table.grid tr { break-inside: avoid; }
table.grid th, table.grid td { border: 0.75pt solid #000; padding: 1pt 4pt; line-height: 1.2; text-align: left; vertical-align: top; overflow-wrap: anywhere; hyphens: manual; }
table.grid tbody tr:first-child { break-after: avoid; }
table.grid tr:has(+ tr:last-child) { break-after: avoid; }
table.grid.short > tbody > tr { break-before: avoid; }
table.grid th { border-bottom-width: 1.25pt; font-weight: 600; font-size: 9pt; padding: 1pt 3pt; }
table.grid .sum { text-align: right; }
table.grid.written > tbody > tr > td { height: 21pt; }
table.grid tr.fresh td { font-weight: 600; border-top-width: 1.5pt; border-bottom-width: 1.5pt; }
.brief { margin: 0 0 6pt; padding-left: 10pt; font-size: 9.5pt; line-height: 1.17; }
.brief li { margin-bottom: 1pt; break-inside: avoid; overflow-wrap: anywhere; }
.brief.run { padding-left: 0; list-style: none; columns: 2; column-gap: 12pt; }
.brief.run li { padding-left: 6pt; text-indent: -6pt; margin-bottom: 0.5pt; line-height: 1.12; }
.brief.run:has(+ .tail) { margin-bottom: 0; }
.brief.tail { break-inside: avoid; }
.result { font-weight: 600; }
.fine { font-size: 9pt; }
table.lines td { line-height: 1.15; }
.source { font-size: 9pt; line-height: 1.15; display: block; }
.index { break-inside: avoid; margin: 0 0 6pt; padding: 0; list-style: none; columns: 2; column-gap: 18pt; border: 0.75pt solid #000; padding: 3pt 5pt; }
.index li { display: flex; gap: 6pt; break-inside: avoid; overflow-wrap: anywhere; }
.index b { flex: 0 0 32pt; font-weight: 600; }
.index a { color: #000; text-decoration: none; min-width: 0; }
a.worked { color: #000; text-decoration: underline dotted 0.5pt; text-underline-offset: 1.5pt; }
.boxed { border: 2pt solid #000; padding: 6pt 10pt; margin: 0 0 8pt; box-decoration-break: clone; -webkit-box-decoration-break: clone; }
.boxed h2 { margin: 0 0 2pt; font-size: 14pt; }
.boxed p { margin-bottom: 3pt; }
.boxed ol { margin: 0; padding-left: 20pt; }
.boxed li { break-inside: avoid; margin-bottom: 2pt; overflow-wrap: anywhere; }
.boxed:has(li:nth-child(13)) ol { font-size: 9pt; line-height: 1.2; }
.blanks { display: flex; gap: 14pt; margin: 21pt 0 7pt; break-inside: avoid; break-before: avoid; }
.blanks div { flex: 1; border-top: 0.75pt solid #000; padding-top: 2pt; font-size: 9pt; }
table.lines + .blanks { margin: 15pt 0 5pt; }
.drawing { margin: 0; break-inside: avoid; }
.drawing svg { display: block; max-width: none; font-family: "Packet", sans-serif; }
.stamp { margin: 0 0 4pt auto; border: 0.75pt solid #000; padding: 2pt 4pt; font-size: 9pt; break-inside: avoid; }
.titleblock { width: 7.25in; border-collapse: collapse; table-layout: fixed; font-size: 9pt; line-height: 1.15; }
.titleblock td { border: 0.75pt solid #000; padding: 1pt 4pt 1.5pt; vertical-align: top; overflow-wrap: anywhere; height: 22pt; }
.titleblock b { display: block; font-size: 8pt; font-weight: 400; }
.titleblock .revision { height: auto; font-size: 8pt; }
@media print {
  .everywhere { position: fixed; left: 0; bottom: 0; }
  .kept { visibility: hidden; }
}
@media screen {
  body { margin: 0.5in auto; width: 7.25in; }
  .sheet { margin-bottom: 0.5in; }
  .everywhere { display: none; }
}
`;

export interface Fonts {
  readonly family: string;
  readonly faces: readonly { readonly weight: number; readonly base64: string; readonly unicodeRange?: string }[];
}

/** The faces as data, under one name of our own. Throws on anything that is not plain base64. */
export function fontFaces(fonts: Fonts): string {
  return fonts.faces
    .map(({ weight, base64, unicodeRange }) => {
      if (unicodeRange !== undefined && !/^U\+[0-9A-F-]+(, U\+[0-9A-F-]+)*$/.test(unicodeRange))
        throw new RangeError(`not a range of characters: ${unicodeRange}`);
      if (!/^[A-Za-z0-9+/]+={0,2}$/.test(base64)) throw new RangeError(`the face of ${fonts.family} at weight ${weight} is not base64`);
      if (!Number.isInteger(weight) || weight < 1 || weight > 1000) throw new RangeError(`not a font weight: ${weight}`);
      return `@font-face { font-family: "Packet"; font-weight: ${weight}; src: url("data:font/woff2;base64,${base64}") format("woff2");${unicodeRange === undefined ? "" : ` unicode-range: ${unicodeRange};`} }`;
    })
    .join("\n");
}
