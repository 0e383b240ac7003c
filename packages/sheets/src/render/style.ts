/** Paged Letter, black on white, 10 pt; the left margin leaves room for punched holes. */
export const STYLE = `
@page { size: Letter portrait; margin: 0.5in 0.5in 0.5in 0.75in; }
* { box-sizing: border-box; }
html { font-size: 10pt; color: #000; background: #fff; }
body { margin: 0; font-family: "Packet", sans-serif; line-height: 1.3; }
.sheet { width: 7.25in; height: 9.85in; border-collapse: collapse; break-after: page; table-layout: fixed; }
.sheet:last-child { break-after: auto; }
.sheet > tbody > tr > td, .sheet > thead > tr > td, .sheet > tfoot > tr > td { padding: 0; vertical-align: top; }
.sheet > tbody > tr { break-inside: auto; }
.sheet > tbody > tr.rest { height: 100%; }
.sheet > thead { display: table-header-group; break-inside: avoid; }
.sheet > tfoot { display: table-footer-group; break-inside: avoid; }
h1 { font-size: 15pt; margin: 0 0 6pt; border-bottom: 1.5pt solid #000; }
h2 { font-size: 11.5pt; margin: 9pt 0 3pt; break-after: avoid; }
p { margin: 0 0 5pt; overflow-wrap: anywhere; }
table.grid { width: 100%; border-collapse: collapse; margin: 5pt 0 9pt; }
table.grid caption { text-align: left; font-weight: 600; padding: 2pt 0; break-after: avoid; }
table.grid thead { display: table-header-group; }
table.grid tr { break-inside: avoid; }
table.grid th, table.grid td { border: 0.5pt solid #000; padding: 2pt 4pt; text-align: left; vertical-align: top; overflow-wrap: break-word; hyphens: manual; }
table.grid th { white-space: nowrap; }
table.grid tbody tr:first-child { break-after: avoid; }
table.grid tr:has(+ tr:last-child) { break-after: avoid; }
table.grid thead { break-inside: avoid; break-after: avoid; }
table.grid th { border-bottom-width: 1.25pt; font-weight: 600; }
table.grid tr.fresh td { font-weight: 600; border-top-width: 1.5pt; border-bottom-width: 1.5pt; }
table.grid td.blank { min-width: 0.55in; }
table.set { table-layout: fixed; }
table.set th { white-space: normal; }
.brief { margin: 0 0 6pt; padding-left: 12pt; font-size: 8.5pt; line-height: 1.25; }
.brief li { margin-bottom: 2pt; break-inside: avoid; overflow-wrap: anywhere; }
.result { white-space: nowrap; font-weight: 600; }
.source { font-size: 8.5pt; display: block; }
.boxed { border: 2pt solid #000; padding: 8pt 10pt; margin: 0 0 9pt; box-decoration-break: clone; -webkit-box-decoration-break: clone; }
.boxed h2 { margin-top: 0; font-size: 14pt; }
.boxed li { break-inside: avoid; margin-bottom: 3pt; }
.blanks { display: flex; gap: 14pt; margin: 20pt 0 8pt; break-inside: avoid; }
.blanks div { flex: 1; border-top: 0.75pt solid #000; padding-top: 2pt; font-size: 9pt; }
.drawing { margin: 0; break-inside: avoid; }
.drawing svg { display: block; max-width: none; font-family: "Packet", sans-serif; }
.foot { width: 100%; border-collapse: collapse; table-layout: fixed; font-size: 8.5pt; }
.sheet > tfoot > tr > td { padding: 6pt 0 1pt; }
.foot td { border: 0.75pt solid #000; padding: 2pt 4pt; vertical-align: top; overflow-wrap: anywhere; }
.foot b { display: block; font-size: 7.5pt; font-weight: 400; }
@media screen { body { margin: 0.5in auto; width: 7.25in; } .sheet { margin-bottom: 0.5in; } }
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
