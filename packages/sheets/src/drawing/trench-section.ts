import { conductorList, conductorsIn, type DrawnConductor, ringOf, roundOfConductor } from "./conductor-round.js";
import { levelDimension, uprightDimension } from "./dimension.js";
import { callOut, paragraph } from "./label-column.js";
import { ASCENT, box, circle, type Drawing, figure, line, type Mark, type Point, path, text } from "./marks.js";

export type BuriedWiring =
  | { readonly kind: "raceway"; readonly name: string; readonly outside_in: number; readonly inside_in: number; readonly conductors: readonly DrawnConductor[] }
  | { readonly kind: "cable"; readonly name: string; readonly width_in: number; readonly height_in: number; readonly conductors: readonly DrawnConductor[] };

/** All in inches. Depth is from grade to the trench floor; cover from grade to the top of the wiring. */
export interface TrenchSectionInput {
  readonly title?: string;
  readonly cover_in: number;
  readonly depth_in: number;
  readonly width_in: number;
  readonly bedding_in: number;
  readonly ribbon_depth_in?: number;
  readonly wiring: BuriedWiring;
  /** What lies on top: "lawn", "4 in concrete drive". */
  readonly surface: string;
  readonly least_cover_words?: string;
}

const WIDTH = 522;
const TOP = 52;
const TALLEST = 225;
const WIDEST = 150;
const MIDDLE = 190;
const COLUMN = 336;
const DETAIL = 80;
const GRADE = "finished grade";

const sentence = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1)}.`;

/** A dimensioned cut across the trench, with the wiring to scale and a larger view of it. */
export function drawTrenchSection(input: TrenchSectionInput): Drawing {
  const { wiring } = input;
  const perInch = Math.min(TALLEST / input.depth_in, WIDEST / input.width_in);
  const down = (inches: number) => TOP + inches * perInch;
  const [left, right] = [MIDDLE - (input.width_in / 2) * perInch, MIDDLE + (input.width_in / 2) * perInch];
  const floor = down(input.depth_in);
  const tall = wiring.kind === "raceway" ? wiring.outside_in : wiring.height_in;
  const centre: Point = [MIDDLE, down(input.cover_in + tall / 2)];
  const bed = down(input.depth_in - input.bedding_in);

  const cut: Mark[] = [
    line([left - 96, TOP], [left, TOP], "medium"),
    line([right, TOP], [right + 40, TOP], "medium"),
    line([left, TOP], [right, TOP], "thin", "hidden"),
    path(
      [
        [left, TOP],
        [left, floor],
        [right, floor],
        [right, TOP],
      ],
      "medium",
    ),
    ...earth(left - 94, left - 50, TOP),
    ...earth(right + 6, right + 38, TOP),
    ...(input.bedding_in > 0 ? [line([left, bed], [right, bed], "fine"), ...stipple(left, right, bed, floor)] : []),
  ];
  const wires = wiringMarks(wiring, centre, perInch, false);
  const ribbon = input.ribbon_depth_in === undefined ? null : down(input.ribbon_depth_in);
  const reach = (right - left) * 0.32;

  // Left: cover next to the trench, depth outside it. Above: width.
  const coverWords = `${figure(input.cover_in)} in cover`;
  const depthWords = `${figure(input.depth_in, 1)} in`;
  const coverX = left - 14;
  const coverTop = down(input.cover_in);
  const dimensions: Mark[] = [
    line([coverX - 4, coverTop], [centre[0] - 2, coverTop], "fine"),
    ...uprightDimension({ top: TOP, bottom: coverTop, x: coverX, edge: coverX, words: "", side: "left" }).filter((m) => m.is !== "text"),
    text([coverX - 6, (TOP + coverTop) / 2 + ASCENT / 2], coverWords, { anchor: "middle", turn: -90 }),
    ...uprightDimension({ top: TOP, bottom: floor, x: left - 46, edge: left - 2, words: depthWords, side: "left" }),
    ...levelDimension({ left, right, y: TOP - 16, edge: TOP, words: `${figure(input.width_in)} in` }),
  ].filter((m) => !(m.is === "text" && m.text === ""));
  const column = callOut(
    [
      { at: [right + 36, TOP], words: input.surface === GRADE ? GRADE : `${GRADE}: ${input.surface}` },
      ...(ribbon === null ? [] : [{ at: [MIDDLE + reach, ribbon] as const, words: `warning ribbon, ${figure(input.ribbon_depth_in ?? 0)} in below grade` }]),
      { at: centre, words: wiring.name, bold: true },
      ...(input.bedding_in > 0 ? [{ at: [right - 8, (bed + floor) / 2] as const, words: `bedding, ${figure(input.bedding_in)} in, free of stones` }] : []),
    ],
    { x: COLUMN, width: WIDTH - COLUMN, top: TOP - 12, side: "right" },
  );

  // The wiring enlarged, with each conductor named beside it.
  const detailTop = Math.max(floor + 20, column.bottom + 14);
  const detailAt: Point = [DETAIL + 2, detailTop + DETAIL + 2];
  const across = wiring.kind === "raceway" ? wiring.outside_in : Math.hypot(wiring.width_in, wiring.height_in);
  const detailScale = (2 * (DETAIL - 4)) / across;
  const x = 2 * DETAIL + 46;
  const names = conductorList(placesOf(wiring, detailAt, detailScale), { x, width: WIDTH - x, top: detailTop + 20, side: "right" });
  const facts = paragraph(
    [
      `Trench to scale, 1 in = ${figure(72 / perInch, 1)} in; wiring below enlarged ${figure(detailScale / perInch, 1)} times.`,
      ...(input.least_cover_words === undefined ? [] : [sentence(input.least_cover_words)]),
    ],
    0,
    Math.max(detailAt[1] + DETAIL + 8, names.bottom + 8),
    WIDTH,
  );
  const title = input.title ?? "Trench section";
  return {
    title,
    alt: `${title}: ${wiring.name} under ${figure(input.cover_in)} inches of cover in a trench ${figure(input.depth_in, 1)} inches deep and ${figure(input.width_in)} wide, ${figure(input.bedding_in)} inches of bedding.`,
    width: WIDTH,
    height: facts.bottom + 4,
    marks: [
      ...cut,
      ...(ribbon === null ? [] : [line([MIDDLE - reach, ribbon], [MIDDLE + reach, ribbon], "heavy", "hidden")]),
      ...wires,
      ...dimensions,
      ...column.marks,
      circle(detailAt, DETAIL, "fine"),
      ...wiringMarks(wiring, detailAt, detailScale, true),
      ...names.marks,
      ...facts.marks,
    ],
  };
}

function wiringMarks(wiring: BuriedWiring, at: Point, perInch: number, letters: boolean): readonly Mark[] {
  if (wiring.kind === "raceway") {
    return [
      ...ringOf(at, (wiring.outside_in / 2) * perInch, (wiring.inside_in / 2) * perInch),
      ...conductorsIn(wiring.conductors, { at, inside_in: wiring.inside_in, perInch, letters }).marks,
    ];
  }
  const [w, h] = [wiring.width_in * perInch, wiring.height_in * perInch];
  return [
    box(at[0] - w / 2, at[1] - h / 2, w, h, "medium", { fill: "white" }),
    ...placesOf(wiring, at, perInch).flatMap((p) =>
      roundOfConductor(letters ? p.conductor : { ...p.conductor, tag: "" }, p.at, p.r).filter((m) => letters || m.is !== "text"),
    ),
  ];
}

/** In a cable the conductors lie side by side. */
function placesOf(wiring: BuriedWiring, at: Point, perInch: number) {
  if (wiring.kind === "raceway") return conductorsIn(wiring.conductors, { at, inside_in: wiring.inside_in, perInch, letters: false }).places;
  const step = (wiring.width_in * perInch) / wiring.conductors.length;
  return wiring.conductors.map((conductor, i) => ({
    conductor,
    at: [at[0] - (wiring.width_in * perInch) / 2 + step * (i + 0.5), at[1]] as const,
    r: Math.min((conductor.diameter_in / 2) * perInch, step * 0.45, wiring.height_in * perInch * 0.42),
  }));
}

/** Three slanting strokes and again: earth in section. */
function earth(from: number, to: number, grade: number): readonly Mark[] {
  const marks: Mark[] = [];
  for (let x = from; x + 14 <= to; x += 22) for (let i = 0; i < 3; i++) marks.push(line([x + i * 4, grade + 10 - i * 1], [x + i * 4 + 6, grade + 2], "fine"));
  return marks;
}

function stipple(left: number, right: number, top: number, bottom: number): readonly Mark[] {
  const marks: Mark[] = [];
  for (let row = 0, y = top + 4; y < bottom - 2; y += 6, row++)
    for (let x = left + 5 + (row % 2) * 5; x < right - 2; x += 10) marks.push(circle([x, y], 0.6, "fine", "black"));
  return marks;
}
