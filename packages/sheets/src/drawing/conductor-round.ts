import { packCircles } from "./circle-packing.js";
import { type Column, callOut, paragraph } from "./label-column.js";
import { LETTER_SIZE, widthOf } from "./lettering.js";
import { ASCENT, circle, line, type Mark, type Point, text } from "./marks.js";
import { hatchLines, roundOf } from "./plane-geometry.js";

export interface DrawnConductor {
  /** Short mark printed in the conductor where it fits: L1, N, G. */
  readonly tag: string;
  /** Size and insulation, for the list beside. */
  readonly words: string;
  /** Over its insulation, in inches. */
  readonly diameter_in: number;
  readonly role: "hot" | "neutral" | "ground" | "other";
}

/** Whether a round is wide enough for its tag at full lettering. */
const takesLetters = (tag: string, r: number): boolean => r > widthOf(tag) / 2 + 1 && r > LETTER_SIZE * 0.7;

/** Told apart without colour: hot hatched one way, neutral plain, ground hatched both ways, others dashed. */
export function roundOfConductor(c: Pick<DrawnConductor, "role" | "tag">, at: Point, r: number): readonly Mark[] {
  const round = roundOf(at, r);
  const spacing = Math.max(3, r / 4);
  const hatch = (degrees: number): Mark[] => hatchLines(round, degrees, spacing).map(([a, b]) => line(a, b, "fine"));
  const lettered = c.tag !== "" && takesLetters(c.tag, r);
  return [
    { is: "circle", at, r, weight: "medium", fill: "white", ...(c.role === "other" ? { dash: "setback" as const } : {}) },
    ...(c.role === "hot" || c.role === "ground" ? hatch(-45) : []),
    ...(c.role === "ground" ? hatch(45) : []),
    ...(lettered ? [text([at[0], at[1] + ASCENT / 2], c.tag, { anchor: "middle", bold: true, masked: true })] : []),
  ];
}

/** Conductors lying in a round opening, to scale about its centre. */
export function conductorsIn(
  conductors: readonly DrawnConductor[],
  opening: { readonly at: Point; readonly inside_in: number; readonly perInch: number; readonly letters: boolean },
): { readonly marks: readonly Mark[]; readonly places: readonly Place[]; readonly leftOver: readonly DrawnConductor[] } {
  const { at, inside_in, perInch, letters } = opening;
  const { laid, leftOver } = packCircles(
    conductors.map((c) => c.diameter_in / 2),
    inside_in / 2,
  );
  const places = laid.map((l) => ({ conductor: conductors[l.index]!, at: [at[0] + l.at[0] * perInch, at[1] + l.at[1] * perInch] as const, r: l.r * perInch }));
  return {
    marks: places.flatMap((p) => roundOfConductor(letters ? p.conductor : { ...p.conductor, tag: "" }, p.at, p.r).filter((m) => letters || m.is !== "text")),
    places,
    leftOver: leftOver.map((i) => conductors[i]!),
  };
}

interface Place {
  readonly conductor: DrawnConductor;
  readonly at: Point;
  readonly r: number;
}

/** What each conductor is, beside the drawing: like ones on one line where their tags stand in them, else each with a leader. */
export function conductorList(places: readonly Place[], column: Column): { readonly marks: readonly Mark[]; readonly bottom: number } {
  if (!places.every((p) => takesLetters(p.conductor.tag, p.r)))
    return callOut(
      places.map((p) => ({ at: [p.at[0] + p.r * 0.7, p.at[1] - p.r * 0.4], words: `${p.conductor.tag}: ${p.conductor.words}` })),
      column,
    );
  const kinds = new Map<string, string[]>();
  for (const { conductor } of places) kinds.set(conductor.words, [...(kinds.get(conductor.words) ?? []), conductor.tag]);
  return paragraph(
    [...kinds].map(([words, tags]) => `${tags.join(", ")}: ${words}`),
    column.x,
    column.top,
    column.width,
  );
}

export const ringOf = (at: Point, outside: number, inside: number): readonly Mark[] => [
  circle(at, outside, "medium", "white"),
  circle(at, inside, "medium", "white"),
];
