import Handlebars from "handlebars";

/** What must not be parted at the end of a line: a section with its code, a number with its unit, a wiring method with its number. */
const UNBROKEN = new RegExp(
  [
    String.raw`NFPA 70-\d{4}(?: (?:Table )?\d[\d.]*(?:\([A-Za-z0-9]{1,3}\))*)?`,
    String.raw`Table \d[\d.]*(?:\([A-Za-z0-9]{1,3}\))*`,
    String.raw`Chapter \d+,? Table \d+`,
    String.raw`\d{3}\.\d+(?:\([A-Za-z0-9]{1,3}\))+`,
    String.raw`(?:\d{1,4} × )?\d[\d,./-]{0,12} (?:AWG|kcmil|kA|VA|V|A|W|Ω|ft|in³|in²|in|cmil|°C|°F|%)(?![\p{L}\d])`,
    String.raw`(?:PVC|NM|UF|LFNC|THWN|XHHW)-[A-Z\d]{1,2}(?![\p{L}\d])`,
    String.raw`\d{4}-\d{2}-\d{2}`,
  ].join("|"),
  "gu",
);
/** Halves to thirty-seconds of an inch; not a conductor size, whose lower figure is 0, and not a quotient. */
const FRACTION = /(?<![\d/.])(\d{1,2}\/(?:2|4|8|16|32))(?![\d/])/g;

const escaped = (text: string): string => Handlebars.escapeExpression(text);

function fractions(text: string): string {
  return text
    .split(FRACTION)
    .map((part, i) => (i % 2 === 1 ? `<span class="fr">${escaped(part)}</span>` : escaped(part)))
    .join("");
}

/** Parted by spaces alone, if at all. */
const PLAIN = /^[\p{L}\d,.×°³²% ]+$/u;

/** Spaces that do not break cost nothing; a span more of a document is one more that the browser lays out and tags. */
const kept = (part: string): string => (PLAIN.test(part) ? part.replaceAll(" ", "\u{A0}") : `<span class="nb">${fractions(part)}</span>`);

/** Text as markup, all of it escaped: the parts that belong on one line kept there, and fractions set as such. */
export function unbroken(given: string): string {
  // The mark of a remark stands with its word.
  const text = given.replace(/(?<![;.,:]) (?=[*†‡](?:[;.,)\s]|$))/g, "\u{A0}");
  let markup = "";
  let from = 0;
  for (const match of text.matchAll(UNBROKEN)) {
    markup += `${fractions(text.slice(from, match.index))}${kept(match[0])}`;
    from = match.index + match[0].length;
  }
  return markup + fractions(text.slice(from));
}
