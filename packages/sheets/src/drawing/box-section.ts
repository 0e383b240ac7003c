import { callOut, paragraph } from "./label-column.js";
import { box, type Drawing, figure, line, type Mark, type Point } from "./marks.js";
import { hatchLines } from "./plane-geometry.js";

export interface BoxSectionInput {
  readonly title?: string;
  readonly name: string;
  /** Marked volume and each allowance, in cubic inches. */
  readonly volume_in3: number;
  readonly used: readonly { readonly words: string; readonly volume_in3: number }[];
}

const WIDTH = 522;
const BOX = { left: 14, top: 14, width: 150, height: 200 } as const;
const ANGLES = [-45, 45, 0, 90] as const;

/** A box as a vessel: each allowance a layer in proportion to its volume, what is free left blank on top. */
export function drawBoxSection(input: BoxSectionInput): Drawing {
  const used = input.used.filter((u) => u.volume_in3 > 0);
  const total = used.reduce((sum, u) => sum + u.volume_in3, 0);
  const free = input.volume_in3 - total;
  // An overfull box is drawn spilling over its rim, at a scale that keeps the spill in the frame.
  const perCubic = BOX.height / Math.max(input.volume_in3, total);
  const floor = BOX.top + BOX.height;
  const rim = floor - input.volume_in3 * perCubic;
  let level = floor;
  const layers = used.map((u, i) => {
    const height = u.volume_in3 * perCubic;
    level -= height;
    return { ...u, i, top: level, height };
  });
  const right = BOX.left + BOX.width;
  const marks: Mark[] = layers.flatMap(({ i, top, height }) => {
    const shape: readonly Point[] = [
      [BOX.left + 3, top],
      [right - 3, top],
      [right - 3, top + height],
      [BOX.left + 3, top + height],
    ];
    return [
      box(BOX.left + 3, top, BOX.width - 6, height, "fine"),
      ...hatchLines(shape, ANGLES[i % 4]!, 6 + 3 * Math.floor((i % 8) / 4)).map(([a, b]) => line(a, b, "fine")),
    ];
  });
  const at = (y: number): Point => [right - 14, y];
  const x = right + 46;
  const column = callOut(
    [
      ...layers.map((l) => ({ at: at(l.top + l.height / 2), words: `${l.words}: ${figure(l.volume_in3)} in³` })),
      ...(free > 0 ? [{ at: at((rim + level) / 2), words: `free: ${figure(free)} in³ (${figure((free / input.volume_in3) * 100, 0)} %)`, bold: true }] : []),
    ],
    { x, width: WIDTH - x, top: 2, side: "right" },
  );
  const verdict = free < 0 ? `TOO SMALL by ${figure(-free)} in³` : `${figure(free)} in³ free`;
  const facts = paragraph(
    [`${input.name}: ${figure(input.volume_in3)} in³ marked, ${figure(total)} in³ used, ${verdict}. Layers in proportion; not a picture of the wiring.`],
    0,
    Math.max(floor + 14, column.bottom + 8),
    WIDTH,
  );
  const title = input.title ?? `Volume of ${input.name}`;
  return {
    title,
    alt: `${title}: ${figure(total)} of ${figure(input.volume_in3)} cubic inches used, ${verdict}.`,
    width: WIDTH,
    height: facts.bottom + 4,
    marks: [
      ...marks,
      line([BOX.left, rim], [BOX.left, floor + 1], "heavy"),
      line([right, rim], [right, floor + 1], "heavy"),
      line([BOX.left, floor + 1], [right, floor + 1], "heavy"),
      line([BOX.left - 10, rim], [right + 10, rim], "thin", "hidden"),
      ...column.marks,
      ...facts.marks,
    ],
  };
}
