import { circle, line, type Mark, type Point, path, text, type Weight } from "../drawing/marks.js";

/** A symbol drawn with its left or upper port at `at`; `span` is how far on its other port lies. Generally per IEEE 315 / ANSI Y32.2. */
export interface PortedSymbol {
  readonly span: number;
  readonly draw: (at: Point, weight: Weight) => readonly Mark[];
}

const half = (at: Point, r: number, across: boolean): readonly Point[] =>
  Array.from({ length: 13 }, (_, i) => {
    const angle = Math.PI - (Math.PI * i) / 12;
    const [along, aside] = [r + r * Math.cos(angle), r * 0.8 * Math.sin(angle)];
    return across ? [at[0] + along, at[1] - aside] : [at[0] + aside, at[1] + along];
  });

/** Breaker in a line that runs across: a gap bridged by an arc. */
export const breakerAcross: PortedSymbol = {
  span: 30,
  draw: ([x, y], weight) => [line([x, y], [x + 6, y], weight), path(half([x + 6, y], 9, true), weight), line([x + 24, y], [x + 30, y], weight)],
};
/** The same in a line that runs down. */
export const breakerDown: PortedSymbol = {
  span: 30,
  draw: ([x, y], weight) => [line([x, y], [x, y + 6], weight), path(half([x, y + 6], 9, false), weight), line([x, y + 24], [x, y + 30], weight)],
};
export const utilityDown: PortedSymbol = {
  span: 30,
  draw: ([x, y], weight) => [
    path(
      [
        [x, y + 2],
        [x + 10, y + 16],
        [x - 10, y + 16],
      ],
      weight,
      { closed: true },
    ),
    line([x, y + 16], [x, y + 30], weight),
  ],
};
export const meterDown: PortedSymbol = {
  span: 36,
  draw: ([x, y], weight) => [
    line([x, y], [x, y + 4], weight),
    circle([x, y + 18], 14, weight),
    text([x, y + 23], "M", { anchor: "middle" }),
    line([x, y + 32], [x, y + 36], weight),
  ],
};
export const outletAcross: PortedSymbol = {
  span: 26,
  draw: ([x, y], weight) => [circle([x + 13, y], 13, weight), line([x + 8, y - 6], [x + 8, y + 6], weight), line([x + 18, y - 6], [x + 18, y + 6], weight)],
};
export const equipmentAcross: PortedSymbol = {
  span: 26,
  draw: ([x, y], weight) => [
    path(
      [
        [x, y - 12],
        [x + 26, y - 12],
        [x + 26, y + 12],
        [x, y + 12],
      ],
      weight,
      { closed: true },
    ),
    line([x + 5, y + 6], [x + 21, y - 6], weight),
  ],
};
/** Earth, hung from `at`. */
export const earthDown: PortedSymbol = {
  span: 24,
  draw: ([x, y], weight) => [
    line([x, y], [x, y + 8], weight),
    line([x - 11, y + 8], [x + 11, y + 8], weight),
    line([x - 7, y + 13], [x + 7, y + 13], weight),
    line([x - 3, y + 18], [x + 3, y + 18], weight),
  ],
};
