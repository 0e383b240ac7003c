import type { PdfFile } from "../src/print/pdf-file.js";
import { pageSize, pagesOf } from "../src/print/pdf-pages.js";
import { isArray, isName, isStream, isString, isWord, type PdfDict, type PdfValue } from "../src/print/pdf-value.js";

/** A line of lettering as it lies on the page: points from the page's lower left corner, of its box. */
export interface Printed {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
  /** Size of its letters in points. */
  readonly size: number;
  /** Degrees of its baseline, 0 for level. */
  readonly turn: number;
  /** Glyph codes in hexadecimal: enough to tell one run from another. */
  readonly codes: string;
}

type Matrix = readonly [number, number, number, number, number, number];
const IDENTITY: Matrix = [1, 0, 0, 1, 0, 0];
/** First `a`, then `b`. */
const after = (a: Matrix, b: Matrix): Matrix => [
  a[0] * b[0] + a[1] * b[2],
  a[0] * b[1] + a[1] * b[3],
  a[2] * b[0] + a[3] * b[2],
  a[2] * b[1] + a[3] * b[3],
  a[4] * b[0] + a[5] * b[2] + b[4],
  a[4] * b[1] + a[5] * b[3] + b[5],
];
const matrixOf = (values: readonly PdfValue[]): Matrix => {
  const numbers = values.filter((value) => typeof value === "number");
  if (numbers.length !== 6) throw new Error("a matrix of other than six numbers");
  return numbers as unknown as Matrix;
};

interface Glyph {
  readonly code: number;
  readonly at: readonly [number, number];
  readonly size: number;
  readonly turn: number;
}

/** The lettering of each page, line by line of the drawing order. White lettering, which serves the outline alone, is left out. */
export function printedPlaces(file: PdfFile): readonly { readonly width: number; readonly height: number; readonly lines: readonly Printed[] }[] {
  return pagesOf(file).map((page) => {
    const [width, height] = pageSize(file, page);
    const contents = file.resolve(page.dict.get("Contents"));
    const streams = (isArray(contents) ? contents : [contents]).map((part) => file.resolve(part)).filter(isStream);
    const glyphs: Glyph[] = [];
    draw(file, Buffer.concat(streams.map((stream) => file.read(stream))), file.dict(page.dict.get("Resources")), IDENTITY, false, glyphs);
    return { width, height, lines: linesOf(glyphs) };
  });
}

function draw(file: PdfFile, source: Buffer, resources: PdfDict | undefined, outer: Matrix, outerWhite: boolean, glyphs: Glyph[]): void {
  const lexer = file.lexer(source);
  let [place, white, size] = [outer, outerWhite, 0];
  let [line, at] = [IDENTITY, IDENTITY];
  const saved: [Matrix, boolean, number][] = [];
  let operands: PdfValue[] = [];
  const move = (x: number, y: number) => {
    line = after([1, 0, 0, 1, x, y], line);
    at = line;
  };
  for (let item = lexer.next(); item !== undefined; item = lexer.next()) {
    if (!isWord(item)) {
      operands.push(item);
      continue;
    }
    const numbers = operands.filter((value) => typeof value === "number");
    switch (item.word) {
      case "q":
        saved.push([place, white, size]);
        break;
      case "Q":
        [place, white, size] = saved.pop() ?? [outer, outerWhite, 0];
        break;
      case "cm":
        place = after(matrixOf(operands), place);
        break;
      case "rg":
        white = numbers.every((part) => part > 0.99);
        break;
      case "Tf":
        size = numbers[0] ?? 0;
        break;
      case "BT":
        [line, at] = [IDENTITY, IDENTITY];
        break;
      case "Tm":
        line = matrixOf(operands);
        at = line;
        break;
      case "Td":
        move(numbers[0] ?? 0, numbers[1] ?? 0);
        break;
      case "Tj": {
        const text = operands.at(-1);
        if (!isString(text) || white) break;
        const whole = after(at, place);
        const scale = Math.hypot(whole[2], whole[3]);
        const code = text.raw.length > 1 ? text.raw.charCodeAt(0) * 256 + text.raw.charCodeAt(1) : text.raw.charCodeAt(0);
        glyphs.push({ code, at: [whole[4], whole[5]], size: size * scale, turn: (Math.atan2(whole[1], whole[0]) * 180) / Math.PI });
        break;
      }
      case "TJ":
        throw new Error("spaced lettering: this reader does not know it");
      case "Do": {
        const [name] = operands;
        const form = isName(name) ? file.resolve(file.dict(resources?.get("XObject"))?.get(name.name)) : null;
        if (isStream(form)) {
          const matrix = file.resolve(form.dict.get("Matrix"));
          const inner = isArray(matrix) ? after(matrixOf(matrix), place) : place;
          draw(file, file.read(form), file.dict(form.dict.get("Resources")) ?? resources, inner, white, glyphs);
        }
        break;
      }
    }
    operands = [];
  }
}

/** Glyphs that follow one another along one baseline make a line; its end is a guess of half a letter past the last. */
function linesOf(glyphs: readonly Glyph[]): readonly Printed[] {
  const runs: Glyph[][] = [];
  for (const glyph of glyphs) {
    const last = runs.at(-1)?.at(-1);
    const angle = (glyph.turn * Math.PI) / 180;
    const [dx, dy] = last === undefined ? [0, 0] : [glyph.at[0] - last.at[0], glyph.at[1] - last.at[1]];
    const [along, across] = [dx * Math.cos(angle) + dy * Math.sin(angle), -dx * Math.sin(angle) + dy * Math.cos(angle)];
    const follows = last !== undefined && last.turn === glyph.turn && Math.abs(across) < 0.1 && along > 0 && along < glyph.size * 1.2;
    if (follows) runs.at(-1)!.push(glyph);
    else runs.push([glyph]);
  }
  return runs.map((run) => {
    const [first, last] = [run[0]!, run.at(-1)!];
    const { size, turn } = first;
    const angle = (turn * Math.PI) / 180;
    const corner = (at: readonly [number, number], along: number, up: number): readonly [number, number] => [
      at[0] + along * Math.cos(angle) - up * Math.sin(angle),
      at[1] + along * Math.sin(angle) + up * Math.cos(angle),
    ];
    // Between the foot of the small letters and the height of the large ones; what hangs below may touch what stands under it.
    const corners = [corner(first.at, 0, 0), corner(first.at, 0, size * 0.62), corner(last.at, size * 0.25, 0), corner(last.at, size * 0.25, size * 0.62)];
    const [xs, ys] = [corners.map(([x]) => x), corners.map(([, y]) => y)];
    return {
      left: Math.min(...xs),
      right: Math.max(...xs),
      bottom: Math.min(...ys),
      top: Math.max(...ys),
      size,
      turn,
      codes: run.map(({ code }) => code.toString(16)).join(" "),
    };
  });
}

/** Pairs of lines that lie on one another by more than a hair. Turned lettering, whose box is larger than it, is passed over. */
export function overlaps(lines: readonly Printed[]): readonly (readonly [Printed, Printed])[] {
  const level = lines.filter(({ turn }) => Math.abs(turn) < 0.01).toSorted((a, b) => a.bottom - b.bottom);
  const found: (readonly [Printed, Printed])[] = [];
  for (const [i, a] of level.entries()) {
    for (const b of level.slice(i + 1)) {
      if (b.bottom >= a.top - 0.5) break;
      if (Math.min(a.right, b.right) - Math.max(a.left, b.left) > 0.5) found.push([a, b]);
    }
  }
  return found;
}

/** The style sets nothing under 8 pt; the browser shrinks a whole page to hold what is too wide. */
export const LEAST_SIZE = 7.9;

/** What is wrong with where words lie and how large they are, each in words. */
export function placeFaults(file: PdfFile): readonly string[] {
  return printedPlaces(file).flatMap(({ lines }, i) => {
    const smallest = Math.min(...lines.map(({ size }) => size));
    return [
      ...overlaps(lines).map(([a]) => `page ${i + 1}: words on one another at ${a.left.toFixed(0)}, ${a.bottom.toFixed(0)}`),
      ...(smallest < LEAST_SIZE ? [`page ${i + 1}: shrunk, its smallest letters are ${smallest.toFixed(1)} pt`] : []),
    ];
  });
}
