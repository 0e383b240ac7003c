import { ASCENT, box, circle, line, type Mark, type Point, path, text } from "./marks.js";
import { type FeetPerInch, pointsPerFoot } from "./site-scale.js";

/** A bar of four inches of paper, cut in halves and wholes, each part alternately filled. */
export function scaleBar(scale: FeetPerInch, [x, y]: Point): readonly Mark[] {
  const perFoot = pointsPerFoot(scale);
  const step = scale;
  const stops = [0, 0.5, 1, 2, 3].map((n) => n * step);
  const left = x + 4;
  return [
    ...stops.slice(1).map((feet, i) => box(left + stops[i]! * perFoot, y, (feet - stops[i]!) * perFoot, 6, "fine", { fill: i % 2 === 0 ? "black" : "white" })),
    text([left - 4, y + 8 + ASCENT], "0"),
    ...stops.slice(2).map((feet, i) => text([left + feet * perFoot, y + 8 + ASCENT], i === stops.length - 3 ? `${feet} ft` : `${feet}`, { anchor: "middle" })),
  ];
}

/** North arrow: a needle half filled in a ring, with its letter beyond the tip. */
export function compass(at: Point, degrees: number): readonly Mark[] {
  const angle = (degrees * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const turned = (x: number, y: number): Point => [at[0] + x * cos - y * sin, at[1] + x * sin + y * cos];
  const reach = 15;
  const letter = turned(0, -reach - 9);
  return [
    circle(at, 10, "fine"),
    path([turned(0, -reach), turned(5, reach * 0.8), turned(0, reach * 0.45)], "fine", { closed: true, fill: "white" }),
    path([turned(0, -reach), turned(-5, reach * 0.8), turned(0, reach * 0.45)], "fine", { closed: true, fill: "black" }),
    line(turned(0, -reach), turned(0, reach * 0.45), "fine"),
    text([letter[0], letter[1] + ASCENT / 2], "N", { anchor: "middle", bold: true }),
  ];
}
