import { circle, line, type Mark, type Point, path } from "../drawing/marks.js";

/** Things shown on a site plan by a marker at their exact place; each shape is its own, without colour or letters. */
export const SITE_POINTS = {
  meter: "meter",
  panel: "panel",
  outlet: "new outlet",
  gas: "gas meter",
  water: "water service",
  septic: "septic system",
  pole: "utility pole",
  well: "well",
  hydrant: "hydrant",
  disconnect: "disconnect",
} as const;
export type SitePointKind = keyof typeof SITE_POINTS;

/** Half the width of the largest marker, in points. */
export const MARKER_REACH = 6;

const square = ([x, y]: Point, h: number): readonly Point[] => [
  [x - h, y - h],
  [x + h, y - h],
  [x + h, y + h],
  [x - h, y + h],
];
const triangle = ([x, y]: Point, h: number): readonly Point[] => [
  [x, y - h],
  [x + h, y + h * 0.8],
  [x - h, y + h * 0.8],
];

export function markerOf(kind: SitePointKind, at: Point): readonly Mark[] {
  const [x, y] = at;
  switch (kind) {
    case "meter":
      return [circle(at, 5, "thin", "white"), line([x, y - 5], [x, y + 5], "thin")];
    case "panel":
      return [path(square(at, 4.5), "thin", { closed: true, fill: "black" })];
    case "outlet":
      return [circle(at, 6, "medium", "white"), circle(at, 2.6, "thin", "black")];
    case "gas":
      return [path(triangle(at, 5.5), "thin", { closed: true, fill: "white" })];
    case "water":
      return [path(square(at, 4.5), "thin", { closed: true, fill: "white" })];
    case "septic":
      return [
        path(
          [
            [x, y - 6],
            [x + 6, y],
            [x, y + 6],
            [x - 6, y],
          ],
          "thin",
          { closed: true, fill: "white" },
        ),
      ];
    case "pole":
      return [circle(at, 3.6, "thin", "black")];
    case "well":
      return [circle(at, 5.5, "fine", "white"), circle(at, 2.4, "fine")];
    case "hydrant":
      return [path(triangle(at, 5.5), "thin", { closed: true, fill: "black" })];
    case "disconnect":
      return [path(square(at, 5), "thin", { closed: true, fill: "white" }), line([x - 5, y + 5], [x + 5, y - 5], "thin")];
    default:
      return kind satisfies never;
  }
}
