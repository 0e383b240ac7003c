import { LETTER_SIZE, widthOf } from "./lettering.js";
import { ASCENT, DASHES, DESCENT, type Drawing, type Mark, type Point, type TextMark, WEIGHTS } from "./marks.js";
import { escapeText } from "./svg.js";

const n = (value: number) => String(Number(value.toFixed(2)));

/** A drawing as SVG at full size, or so many times that; `id` must be the only one of its name on the page. */
export function svgOfDrawing(drawing: Drawing, id: string, scale = 1): string {
  const { width, height } = drawing;
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" role="img" aria-labelledby="${id}-t ${id}-d" width="${n(width * scale)}pt" height="${n(height * scale)}pt" viewBox="0 0 ${n(width)} ${n(height)}" fill="none" stroke="#000" stroke-linejoin="round">` +
    `<title id="${id}-t">${escapeText(drawing.title)}</title><desc id="${id}-d">${escapeText(drawing.alt)}</desc>` +
    `<g font-size="${LETTER_SIZE}" class="letters">${drawing.marks.map(markup).join("")}</g></svg>`
  );
}

function markup(mark: Mark): string {
  if (mark.is === "text") return lettering(mark);
  const fill = mark.fill === undefined ? "" : ` fill="${mark.fill === "black" ? "#000" : "#fff"}"`;
  const pen = `${fill} stroke-width="${WEIGHTS[mark.weight]}"${mark.dash === undefined ? "" : ` stroke-dasharray="${DASHES[mark.dash].join(" ")}"`}`;
  if (mark.is === "circle") return `<circle cx="${n(mark.at[0])}" cy="${n(mark.at[1])}" r="${n(mark.r)}"${pen}/>`;
  const points = mark.points.map(([x, y]: Point) => `${n(x)},${n(y)}`).join(" ");
  return mark.closed ? `<polygon points="${points}"${pen}/>` : `<polyline points="${points}"${pen}/>`;
}

function lettering(mark: TextMark): string {
  const [x, y] = mark.at;
  const turn = mark.turn === 0 ? "" : ` transform="rotate(${n(mark.turn)} ${n(x)} ${n(y)})"`;
  const width = widthOf(mark.text);
  const left = mark.anchor === "start" ? x : mark.anchor === "middle" ? x - width / 2 : x - width;
  const mask = mark.masked
    ? `<rect x="${n(left)}" y="${n(y - ASCENT)}" width="${n(width)}" height="${n(ASCENT + DESCENT)}" fill="#fff" stroke="none"${turn}/>`
    : "";
  return `${mask}<text x="${n(x)}" y="${n(y)}" text-anchor="${mark.anchor}" fill="#000" stroke="none"${mark.bold ? ' font-weight="600"' : ""}${turn}>${escapeText(mark.text)}</text>`;
}
