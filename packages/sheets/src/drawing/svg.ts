import { ONE_LINE_SYMBOLS, type Stroke } from "../symbols/one-line.js";
import { LETTER_SIZE, LINE_HEIGHT } from "./lettering.js";
import { PAGE, type Scene } from "./scene.js";

const ESCAPES: Record<string, string> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;", "'": "&#39;", "`": "&#96;", "{": "&#123;", "}": "&#125;" };

/** Text made safe for markup; control characters, which XML forbids, are dropped. */
export function escapeText(text: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: XML forbids these
  return text.replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g, "").replace(/[&<>"'`{}]/g, (c) => ESCAPES[c] ?? "");
}

const THIN = 1;
const HEAVY = 2.5;

/** The scene as SVG at full size: letters are at least 1/8 in high when printed at 100 %. */
export function svgOf(scene: Scene, id: string): string {
  const words = (x: number, y: number, text: string, extra = "") => `<text x="${x}" y="${y}"${extra}>${escapeText(text)}</text>`;
  const parts = scene.placed.flatMap((p, index) => {
    const following = scene.placed[index + 1];
    // The line on from this symbol down to the next; nothing follows the last.
    const onward: Stroke[] = following === undefined ? [] : [{ is: "line", from: [0, p.symbolHeight], to: [0, following.top - p.top] }];
    return [
      `<g transform="translate(${p.x} ${p.top})" stroke-width="${p.fresh ? HEAVY : THIN}">${ONE_LINE_SYMBOLS[p.symbol].map(strokeOf).join("")}</g>`,
      ...(onward.length === 0
        ? []
        : [`<g transform="translate(${p.x} ${p.top})" stroke-width="${following?.fresh ? HEAVY : THIN}">${onward.map(strokeOf).join("")}</g>`]),
      ...p.text.lines.map((line, n) => words(p.text.x, p.text.top + n * LINE_HEIGHT + LETTER_SIZE, line, p.fresh ? ' font-weight="600"' : "")),
    ];
  });
  const y = scene.legendTop;
  const legend = [
    `<line x1="0" y1="${y}" x2="${PAGE.width}" y2="${y}" stroke-width="${THIN}"/>`,
    `<line x1="0" y1="${y + 18}" x2="40" y2="${y + 18}" stroke-width="${THIN}"/>`,
    words(50, y + 23, "existing (E)"),
    `<line x1="170" y1="${y + 18}" x2="210" y2="${y + 18}" stroke-width="${HEAVY}"/>`,
    words(220, y + 23, "new"),
    words(300, y + 23, "Not to scale"),
    words(0, y + 23 + LINE_HEIGHT, "Symbols generally per IEEE 315 / ANSI Y32.2"),
  ];
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" role="img" aria-labelledby="${id}" width="${PAGE.width}pt" height="${PAGE.height}pt" viewBox="0 0 ${PAGE.width} ${PAGE.height}" fill="none" stroke="#000">` +
    `<title id="${id}">${escapeText(scene.alt)}</title><g font-size="${LETTER_SIZE}" class="letters">${[...parts, ...legend].join("").replaceAll("<text ", '<text fill="#000" stroke="none" ')}</g></svg>`
  );
}

function strokeOf(stroke: Stroke): string {
  switch (stroke.is) {
    case "line":
      return `<line x1="${stroke.from[0]}" y1="${stroke.from[1]}" x2="${stroke.to[0]}" y2="${stroke.to[1]}"/>`;
    case "circle":
      return `<circle cx="${stroke.at[0]}" cy="${stroke.at[1]}" r="${stroke.r}"/>`;
    case "arc":
      return `<path d="${stroke.d}"/>`;
    case "letter":
      return `<text x="${stroke.at[0]}" y="${stroke.at[1]}" text-anchor="middle">${escapeText(stroke.text)}</text>`;
    default:
      return stroke satisfies never;
  }
}
