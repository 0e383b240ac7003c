import { conductorList, conductorsIn, type DrawnConductor, ringOf } from "./conductor-round.js";
import { paragraph } from "./label-column.js";
import { type Drawing, figure, line, type Mark, type Point } from "./marks.js";
import { hatchLines, roundOf } from "./plane-geometry.js";

export interface RacewaySectionInput {
  readonly title?: string;
  /** What the raceway is: "1 in PVC-40". */
  readonly name: string;
  readonly inside_in: number;
  readonly outside_in: number;
  readonly conductors: readonly DrawnConductor[];
  /** As computed elsewhere; printed, not recomputed. */
  readonly fill_percent: number;
  readonly limit_percent: number;
}

const WIDTH = 522;
const RADIUS = 96;
const CENTRE: Point = [RADIUS + 4, RADIUS + 4];

/** A cut across a raceway with its conductors to scale, and its fill. */
export function drawRacewaySection(input: RacewaySectionInput): Drawing {
  const perInch = (2 * RADIUS) / input.outside_in;
  const inside = conductorsIn(input.conductors, { at: CENTRE, inside_in: input.inside_in, perInch, letters: true });
  const wall: Mark[] = hatchLines(roundOf(CENTRE, RADIUS), 60, 6)
    .flatMap(([a, b]) => outsideOf(a, b, CENTRE, (input.inside_in / 2) * perInch))
    .map(([a, b]) => line(a, b, "fine"));
  const x = 2 * RADIUS + 46;
  const column = conductorList(
    inside.places.map((p) => ({ ...p, conductor: { ...p.conductor, words: `${p.conductor.words}, ${figure(p.conductor.diameter_in, 3)} in` } })),
    { x, width: WIDTH - x, top: 30, side: "right" },
  );
  const title = input.title ?? `Section through ${input.name}`;
  const left = inside.leftOver.length === 0 ? [] : [`Does not fit as drawn: ${inside.leftOver.map((c) => c.tag).join(", ")}.`];
  const facts = paragraph(
    [
      `${input.name}: inside ${figure(input.inside_in, 3)} in, outside ${figure(input.outside_in, 3)} in. Scale ${figure(perInch / 72, 1)} to 1.`,
      `Fill ${figure(input.fill_percent, 1)} % of ${figure(input.limit_percent, 1)} % allowed${input.fill_percent > input.limit_percent ? ": TOO FULL" : ""}.`,
      ...left,
      "Hatched one way: hot. Plain: neutral. Hatched both ways: ground.",
    ],
    0,
    Math.max(2 * RADIUS + 16, column.bottom + 8),
    WIDTH,
  );
  return {
    title,
    alt: `${title}: ${input.conductors.map((c) => `${c.tag} ${c.words}`).join(", ")}; fill ${figure(input.fill_percent, 1)} per cent of ${figure(input.limit_percent, 1)} allowed.`,
    width: WIDTH,
    height: facts.bottom + 4,
    marks: [...ringOf(CENTRE, RADIUS, (input.inside_in / 2) * perInch), ...wall, ...inside.marks, ...column.marks, ...facts.marks],
  };
}

/** The parts of a stretch through a ring that lie in its wall. */
function outsideOf(a: Point, b: Point, centre: Point, r: number): readonly (readonly [Point, Point])[] {
  const [dx, dy, fx, fy] = [b[0] - a[0], b[1] - a[1], a[0] - centre[0], a[1] - centre[1]];
  const [qa, qb, qc] = [dx * dx + dy * dy, 2 * (fx * dx + fy * dy), fx * fx + fy * fy - r * r];
  const under = qb * qb - 4 * qa * qc;
  if (under <= 0 || qa === 0) return [[a, b]];
  const at = (t: number): Point => [a[0] + dx * t, a[1] + dy * t];
  const [t1, t2] = [(-qb - Math.sqrt(under)) / (2 * qa), (-qb + Math.sqrt(under)) / (2 * qa)];
  return [
    [a, at(t1)],
    [at(t2), b],
  ];
}
