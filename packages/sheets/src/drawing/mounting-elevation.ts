import { levelDimension, uprightDimension } from "./dimension.js";
import { callOut, paragraph } from "./label-column.js";
import { box, circle, type Drawing, figure, line, type Mark, path } from "./marks.js";
import { hatchLines } from "./plane-geometry.js";

/** All in inches; heights from finished grade. */
export interface MountingElevationInput {
  readonly title?: string;
  readonly on: "wall" | "post";
  /** To the outlet's centre. */
  readonly centre_height_in: number;
  readonly outlet: string;
  readonly box: { readonly width_in: number; readonly height_in: number };
  /** "weatherproof with the plug in", as printed. */
  readonly cover: string;
  /** Raceway that comes up from the ground; left out where the wiring comes through the wall. */
  readonly riser?: {
    readonly words: string;
    readonly outside_in: number;
    readonly protection?: { readonly words: string; readonly height_in: number };
    readonly burial_in: number;
  };
  readonly post?: { readonly width_in: number; readonly top_in: number; readonly embedment_in: number; readonly words: string };
  readonly working_space?: { readonly width_in: number; readonly depth_in: number; readonly height_in: number };
}

const WIDTH = 522;
const MIDDLE = 158;
const ROOM = { above: 300, width: 176 } as const;
const TOP = 22;

/** The outlet on its wall or post seen from the front, with the room to be kept clear before it. */
export function drawMountingElevation(input: MountingElevationInput): Drawing {
  const { riser, post, working_space: space } = input;
  const boxTop = input.centre_height_in + input.box.height_in / 2;
  const tallest = Math.max(boxTop + 8, post?.top_in ?? 0, space?.height_in ?? 0);
  const deepest = Math.max(riser?.burial_in ?? 0, post?.embedment_in ?? 0, 4) + 3;
  const widest = Math.max(space?.width_in ?? 0, input.box.width_in, post?.width_in ?? 0, 12);
  const perInch = Math.min(ROOM.above / (tallest + deepest), ROOM.width / widest);
  const grade = TOP + tallest * perInch;
  const up = (inches: number) => grade - inches * perInch;
  const halves = (inches: number) => [MIDDLE - (inches / 2) * perInch, MIDDLE + (inches / 2) * perInch] as const;
  const [boxLeft, boxRight] = halves(input.box.width_in);
  const bottom = grade + deepest * perInch;
  const marks: Mark[] = [];

  if (post !== undefined) {
    const [l, r] = halves(post.width_in);
    marks.push(box(l, up(post.top_in), r - l, post.top_in * perInch, "medium", { fill: "white" }));
    marks.push(box(l, grade, r - l, post.embedment_in * perInch, "thin", { dash: "hidden" }));
  }
  if (input.on === "wall") {
    const [l, r] = [MIDDLE - ROOM.width / 2, MIDDLE + ROOM.width / 2];
    // Courses of siding, told by the words beside it.
    for (let y = grade - 12; y > TOP + 4; y -= 14) marks.push(line([l, y], [r, y], "fine", "setback"));
  }
  if (riser !== undefined) {
    const [l, r] = halves(Math.max(riser.outside_in, 1.5 / perInch));
    marks.push(
      box(
        l,
        up(input.centre_height_in - input.box.height_in / 2),
        r - l,
        grade - up(input.centre_height_in - input.box.height_in / 2) + riser.burial_in * perInch,
        "thin",
        { fill: "white" },
      ),
    );
    if (riser.protection !== undefined) {
      const [pl, pr] = [l - 4, r + 4];
      const top = up(riser.protection.height_in);
      const foot = grade + riser.burial_in * perInch;
      const shape = [
        [pl, top],
        [pr, top],
        [pr, foot],
        [pl, foot],
      ] as const;
      marks.push(path(shape, "medium", { closed: true, fill: "white" }), ...hatchLines(shape, -45, 5).map(([a, b]) => line(a, b, "fine")));
    }
  }
  const centre = [MIDDLE, up(input.centre_height_in)] as const;
  const r = Math.max(3, Math.min(input.box.width_in, input.box.height_in) * perInch * 0.28);
  marks.push(
    box(boxLeft, up(boxTop), boxRight - boxLeft, input.box.height_in * perInch, "heavy", { fill: "white" }),
    circle(centre, r, "thin"),
    line([centre[0] - r * 0.4, centre[1] - r * 0.45], [centre[0] - r * 0.4, centre[1] + r * 0.45], "thin"),
    line([centre[0] + r * 0.4, centre[1] - r * 0.45], [centre[0] + r * 0.4, centre[1] + r * 0.45], "thin"),
    line([MIDDLE - ROOM.width / 2 - 20, grade], [MIDDLE + ROOM.width / 2 + 20, grade], "medium"),
  );
  for (let x = MIDDLE - ROOM.width / 2 - 14; x < MIDDLE + ROOM.width / 2 + 10; x += 24) {
    if (Math.abs(x - MIDDLE) > 30) for (let i = 0; i < 3; i++) marks.push(line([x + i * 4 - 4, grade + 9], [x + i * 4 + 2, grade + 2], "fine"));
  }
  if (space !== undefined) {
    const [l, right] = halves(space.width_in);
    marks.push(box(l, up(space.height_in), right - l, space.height_in * perInch, "thin", { dash: "overhead" }));
  }

  // Dimensions: height at the left; the clear width below the grade line.
  const far = MIDDLE - ROOM.width / 2 - 8;
  marks.push(
    line([far + 6, centre[1]], [boxLeft - 4, centre[1]], "fine"),
    ...uprightDimension({ top: centre[1], bottom: grade, x: far, edge: far + 4, words: `${figure(input.centre_height_in)} in`, side: "left" }),
  );
  if (post !== undefined) {
    const foot = grade + post.embedment_in * perInch;
    marks.push(
      line([far + 6, foot], [halves(post.width_in)[0] - 4, foot], "fine"),
      ...uprightDimension({ top: grade, bottom: foot, x: far, edge: far + 4, words: `${figure(post.embedment_in)} in`, side: "left" }),
    );
  }
  if (space !== undefined) {
    const [l, right] = halves(space.width_in);
    marks.push(...levelDimension({ left: l, right, y: bottom + 10, edge: grade, words: `${figure(space.width_in)} in clear` }));
  }
  const column = callOut(
    [
      ...(space === undefined
        ? []
        : [
            {
              at: [halves(space.width_in)[1], up(space.height_in) + 4] as const,
              words: `working space ${figure(space.width_in)} in wide, ${figure(space.height_in / 12, 2)} ft high, ${figure(space.depth_in)} in deep before it`,
            },
          ]),
      ...(post === undefined ? [] : [{ at: [halves(post.width_in)[1], (up(post.top_in) + Math.min(up(boxTop), grade)) / 2] as const, words: post.words }]),
      { at: [boxRight, up(boxTop) + 4], words: `cover: ${input.cover}` },
      { at: [centre[0] + r, centre[1]], words: `new: ${input.outlet}`, bold: true },
      ...(riser === undefined
        ? []
        : [
            {
              at: [MIDDLE, (up(input.centre_height_in - input.box.height_in / 2) + up(riser.protection?.height_in ?? 0)) / 2] as const,
              words: `riser: ${riser.words}, to ${figure(riser.burial_in)} in below grade`,
            },
            ...(riser.protection === undefined
              ? []
              : [{ at: [MIDDLE + 5, up(riser.protection.height_in * 0.4)] as const, words: `protection: ${riser.protection.words}` }]),
          ]),
      { at: [MIDDLE + ROOM.width / 2 + 10, grade], words: "finished grade" },
    ],
    { x: 306, width: WIDTH - 306, top: 4, side: "right" },
  );
  const facts = paragraph(
    [`Front view on ${input.on}, to scale, 1 in = ${figure(72 / perInch, 1)} in at 100 %.`],
    0,
    Math.max(bottom + 36, column.bottom + 10),
    WIDTH,
  );
  const title = input.title ?? `Mounting of ${input.outlet}`;
  return {
    title,
    alt: `${title}: centre ${figure(input.centre_height_in)} inches above grade on a ${input.on}; cover ${input.cover}.`,
    width: WIDTH,
    height: facts.bottom + 4,
    marks: [...marks, ...column.marks, ...facts.marks],
  };
}
