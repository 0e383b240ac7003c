import { widthOf } from "./lettering.js";
import { ASCENT, line, type Mark, text } from "./marks.js";

const TICK = 3.5;
const OVERRUN = 4;

/** An upright dimension between two heights, its figure level beside the line; `x` is the line, `edge` where the thing itself ends. */
export function uprightDimension(d: { top: number; bottom: number; x: number; edge: number; words: string; side: "left" | "right" }): readonly Mark[] {
  const away = d.x < d.edge ? -1 : 1;
  const middle = (d.top + d.bottom) / 2;
  return [
    line([d.edge + away * 3, d.top], [d.x + away * OVERRUN, d.top], "fine"),
    line([d.edge + away * 3, d.bottom], [d.x + away * OVERRUN, d.bottom], "fine"),
    line([d.x, d.top], [d.x, d.bottom], "fine"),
    ...[d.top, d.bottom].map((y) => line([d.x - TICK, y + TICK], [d.x + TICK, y - TICK], "thin")),
    text([d.x + (d.side === "left" ? -6 : 6), middle + ASCENT / 2], d.words, { anchor: d.side === "left" ? "end" : "start" }),
  ];
}

/** A level dimension; the figure stands above the line, or after its end where it is wider than the stretch. */
export function levelDimension(d: { left: number; right: number; y: number; edge: number; words: string }): readonly Mark[] {
  const away = d.y < d.edge ? -1 : 1;
  const narrow = widthOf(d.words) > d.right - d.left - 4;
  return [
    line([d.left, d.edge + away * 3], [d.left, d.y + away * OVERRUN], "fine"),
    line([d.right, d.edge + away * 3], [d.right, d.y + away * OVERRUN], "fine"),
    line([d.left, d.y], [d.right, d.y], "fine"),
    ...[d.left, d.right].map((x) => line([x - TICK, d.y + TICK], [x + TICK, d.y - TICK], "thin")),
    narrow
      ? text([d.right + 8, d.y + ASCENT / 2], d.words)
      : text([(d.left + d.right) / 2, away < 0 ? d.y - 5 : d.y + ASCENT + 5], d.words, { anchor: "middle" }),
  ];
}
