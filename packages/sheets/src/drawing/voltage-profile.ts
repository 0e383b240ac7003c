import { LINE_HEIGHT, widthOf, wrap } from "./lettering.js";
import { ASCENT, box, circle, type Drawing, figure, line, type Mark, type Point, path, text } from "./marks.js";

/** Voltage at each point of the chain, in order of the current's way. */
export interface VoltageProfileInput {
  readonly title?: string;
  readonly points: readonly { readonly name: string; readonly distance_ft: number; readonly volts: number }[];
  /** The least voltage the design holds to. */
  readonly limit?: { readonly volts: number; readonly words: string };
  readonly load_words: string;
}

const WIDTH = 522;
const PLOT = { left: 62, right: 500, top: 30, bottom: 210 } as const;
const STEPS = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100] as const;
const MOST_GAPS = 6;

/** Voltage against distance from the panel; the scale of volts does not begin at nought, and says so. */
export function drawVoltageProfile(input: VoltageProfileInput): Drawing {
  const volts = [...input.points.map((p) => p.volts), ...(input.limit === undefined ? [] : [input.limit.volts])];
  const [low, high] = [Math.min(...volts), Math.max(...volts)];
  const step = STEPS.find((s) => Math.ceil(high / s) - Math.floor(low / s) <= MOST_GAPS) ?? 100;
  const [base, roof] = [Math.floor(low / step) * step, Math.max(Math.ceil(high / step) * step, Math.floor(low / step) * step + step)];
  const far = Math.max(...input.points.map((p) => p.distance_ft), 1);
  const at = (feet: number, v: number): Point => [
    PLOT.left + (feet / far) * (PLOT.right - PLOT.left - 20),
    PLOT.bottom - ((v - base) / (roof - base)) * (PLOT.bottom - PLOT.top),
  ];
  const places = step < 1 ? 1 : 0;
  const grid: Mark[] = [];
  for (let i = 0; base + i * step <= roof + step / 2; i++) {
    const v = base + i * step;
    const y = at(0, v)[1];
    grid.push(line([PLOT.left - 4, y], [PLOT.right, y], "fine", "setback"), text([PLOT.left - 8, y + ASCENT / 2], figure(v, places), { anchor: "end" }));
  }
  const way = input.points.map((p) => at(p.distance_ft, p.volts));
  const numbers: Mark[] = [];
  let edge = Number.NEGATIVE_INFINITY;
  for (const [i, [x]] of way.entries()) {
    const half = widthOf(`${i + 1}`) / 2;
    // Points too close for two figures share a stem: the next figure steps to the right.
    const centre = Math.max(x, edge + half + 4);
    edge = centre + half;
    numbers.push(line([x, PLOT.bottom], [centre, PLOT.bottom + 8], "fine"), text([centre, PLOT.bottom + 9 + ASCENT], `${i + 1}`, { anchor: "middle" }));
  }
  const tableTop = PLOT.bottom + 36;
  const rows = input.points.flatMap((p, i) => wrap(`${i + 1}  ${p.name}: ${figure(p.distance_ft, 1)} ft, ${figure(p.volts, 1)} V`, WIDTH));
  const notes = [
    ...wrap(`${input.load_words}. Feet one way from the panel. The scale of volts does not begin at 0.`, WIDTH),
    ...(input.limit === undefined ? [] : wrap(`Long dashes: ${input.limit.words}, ${figure(input.limit.volts, 1)} V.`, WIDTH)),
  ];
  const words = [...rows, ...notes];
  const title = input.title ?? "Voltage along the circuit";
  return {
    title,
    alt: `${title}: ${input.points.map((p) => `${p.name} ${figure(p.volts, 1)} V`).join(", ")}.`,
    width: WIDTH,
    height: tableTop + words.length * LINE_HEIGHT + 4,
    marks: [
      text([PLOT.left - 8, PLOT.top - 12], "volts", { anchor: "end" }),
      ...grid,
      box(PLOT.left, PLOT.top, PLOT.right - PLOT.left, PLOT.bottom - PLOT.top, "thin"),
      ...(input.limit === undefined ? [] : [line([PLOT.left, at(0, input.limit.volts)[1]], [PLOT.right, at(0, input.limit.volts)[1]], "medium", "trench")]),
      path(way, "heavy"),
      ...way.map((p) => circle(p, 4, "medium", "white")),
      ...numbers,
      ...words.map((w, i) => text([0, tableTop + ASCENT + i * LINE_HEIGHT], w)),
    ],
  };
}
