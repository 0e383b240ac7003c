import { LETTER_SIZE, widthOf } from "./lettering.js";

/** Points of the page, 72 to the inch; x to the right, y down. */
export type Point = readonly [number, number];

/** Widths of lines in points; the finest is 0.26 mm. */
export const WEIGHTS = { fine: 0.75, thin: 1, medium: 1.6, heavy: 2.5 } as const;
export type Weight = keyof typeof WEIGHTS;

/** Lengths of dash and gap in points. */
export const DASHES = {
  hidden: [5, 3],
  trench: [11, 5],
  lot: [18, 4, 3, 4],
  overhead: [14, 3, 2, 3, 2, 3],
  setback: [2, 3],
} as const;
export type Dash = keyof typeof DASHES;

export type Mark =
  | {
      readonly is: "path";
      readonly points: readonly Point[];
      readonly closed: boolean;
      readonly weight: Weight;
      readonly dash?: Dash;
      readonly fill?: "black" | "white";
    }
  | { readonly is: "circle"; readonly at: Point; readonly r: number; readonly weight: Weight; readonly dash?: Dash; readonly fill?: "black" | "white" }
  | TextMark;

/** One line of lettering; `at` is its baseline. A masked one clears the ground behind it. */
export interface TextMark {
  readonly is: "text";
  readonly at: Point;
  readonly text: string;
  readonly anchor: "start" | "middle" | "end";
  readonly bold: boolean;
  /** Degrees, clockwise on the page. */
  readonly turn: number;
  readonly masked: boolean;
}

/** A drawing as plain data, ready for any renderer. */
export interface Drawing {
  readonly title: string;
  readonly alt: string;
  readonly width: number;
  readonly height: number;
  readonly marks: readonly Mark[];
}

export const line = (from: Point, to: Point, weight: Weight = "thin", dash?: Dash): Mark => path([from, to], weight, dash === undefined ? {} : { dash });

export function path(points: readonly Point[], weight: Weight, more: { closed?: boolean; dash?: Dash; fill?: "black" | "white" } = {}): Mark {
  return { is: "path", points, closed: false, weight, ...more };
}

export const box = (x: number, y: number, width: number, height: number, weight: Weight, more: { dash?: Dash; fill?: "black" | "white" } = {}): Mark =>
  path(
    [
      [x, y],
      [x + width, y],
      [x + width, y + height],
      [x, y + height],
    ],
    weight,
    { closed: true, ...more },
  );

export const circle = (at: Point, r: number, weight: Weight, fill?: "black" | "white"): Mark => ({
  is: "circle",
  at,
  r,
  weight,
  ...(fill === undefined ? {} : { fill }),
});

export function text(at: Point, words: string, more: Partial<Pick<TextMark, "anchor" | "bold" | "turn" | "masked">> = {}): TextMark {
  return { is: "text", at, text: words, anchor: "start", bold: false, turn: 0, masked: false, ...more };
}

export const ASCENT = LETTER_SIZE * 0.82;
export const DESCENT = LETTER_SIZE * 0.26;

/** The four corners of the room that a line of lettering takes. */
export function cornersOf(mark: TextMark): readonly Point[] {
  const width = widthOf(mark.text);
  const left = mark.anchor === "start" ? 0 : mark.anchor === "middle" ? -width / 2 : -width;
  const angle = (mark.turn * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const turned = (x: number, y: number): Point => [mark.at[0] + x * cos - y * sin, mark.at[1] + x * sin + y * cos];
  return [turned(left, -ASCENT), turned(left + width, -ASCENT), turned(left + width, DESCENT), turned(left, DESCENT)];
}

/** Shortens words to a width, with an ellipsis. */
export function fitted(words: string, width: number): string {
  if (widthOf(words) <= width) return words;
  let kept = [...words];
  while (kept.length > 0 && widthOf(`${kept.join("").trimEnd()}…`) > width) kept = kept.slice(0, -1);
  return `${kept.join("").trimEnd()}…`;
}

/** A number with at most so many places and no idle noughts: 24, 1.5, 0.84. */
export function figure(value: number, places = 2): string {
  const fixed = value.toFixed(places);
  return places === 0 ? fixed : fixed.replace(/\.?0+$/, "").replace(/^-0$/, "0");
}
