import type { StationSymbol } from "../drawing/graph.js";

/** A part of a symbol, in points from the symbol's top centre. */
export type Stroke =
  | { readonly is: "line"; readonly from: readonly [number, number]; readonly to: readonly [number, number] }
  | { readonly is: "circle"; readonly at: readonly [number, number]; readonly r: number }
  | { readonly is: "arc"; readonly d: string }
  | { readonly is: "letter"; readonly at: readonly [number, number]; readonly text: string };

const line = (x1: number, y1: number, x2: number, y2: number): Stroke => ({ is: "line", from: [x1, y1], to: [x2, y2] });

/** Breaker: a gap in the line bridged by an arc. */
const breaker: readonly Stroke[] = [line(0, 0, 0, 8), { is: "arc", d: "M0 8 A 12 10 0 0 1 0 26" }, line(0, 26, 0, 34)];

export const ONE_LINE_SYMBOLS: Record<StationSymbol, readonly Stroke[]> = {
  utility: [line(0, 2, -10, 14), line(0, 2, 10, 14), line(-10, 14, 10, 14), line(0, 14, 0, 30)],
  meter: [{ is: "circle", at: [0, 17], r: 14 }, { is: "letter", at: [0, 22], text: "M" }, line(0, 0, 0, 3), line(0, 31, 0, 34)],
  main: breaker,
  breaker,
  bus: [line(0, 0, 0, 8), line(-40, 8, 40, 8), line(0, 8, 0, 16)],
  conductors: [line(0, 0, 0, 38), line(-6, 22, 6, 14)],
  box: [line(-11, 2, 11, 2), line(11, 2, 11, 24), line(11, 24, -11, 24), line(-11, 24, -11, 2), line(0, 0, 0, 2), line(0, 24, 0, 26)],
  outlet: [{ is: "circle", at: [0, 15], r: 12 }, line(-5, 9, -5, 21), line(5, 9, 5, 21), line(0, 0, 0, 3), line(0, 27, 0, 30)],
  equipment: [
    line(-16, 3, 16, 3),
    line(16, 3, 16, 27),
    line(16, 27, -16, 27),
    line(-16, 27, -16, 3),
    { is: "letter", at: [0, 20], text: "EV" },
    line(0, 0, 0, 3),
    line(0, 27, 0, 30),
  ],
  ground: [line(0, 0, 0, 8), line(-12, 8, 12, 8), line(-8, 14, 8, 14), line(-4, 20, 4, 20)],
  continued: [line(0, 0, 0, 24), line(-14, 10, 14, 14)],
};
