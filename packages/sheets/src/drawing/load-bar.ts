import { paragraph } from "./label-column.js";
import { widthOf } from "./lettering.js";
import { ASCENT, box, type Drawing, figure, line, type Mark, type Point, path, text } from "./marks.js";
import { hatchLines } from "./plane-geometry.js";

/** Amperes on the service, as computed elsewhere. */
export interface LoadBarInput {
  readonly title?: string;
  readonly existing_A: number;
  readonly added_A: number;
  readonly rating_A: number;
  readonly existing_words: string;
  readonly added_words: string;
}

const WIDTH = 522;
const BAR = { left: 6, right: 500, top: 30, height: 46 } as const;
const STEPS = [10, 20, 25, 50, 100, 200, 500] as const;

/** Existing and added load against the rating of the service. */
export function drawLoadBar(input: LoadBarInput): Drawing {
  const total = input.existing_A + input.added_A;
  const full = Math.max(total, input.rating_A) * 1.06;
  const at = (amperes: number) => BAR.left + (amperes / full) * (BAR.right - BAR.left);
  const part = (from: number, to: number, degrees: readonly number[], spacing: number): Mark[] => {
    const shape: readonly Point[] = [
      [at(from), BAR.top],
      [at(to), BAR.top],
      [at(to), BAR.top + BAR.height],
      [at(from), BAR.top + BAR.height],
    ];
    return degrees.flatMap((d) => hatchLines(shape, d, spacing).map(([a, b]) => line(a, b, "fine")));
  };
  const step = STEPS.find((s) => full / s <= 8) ?? 1000;
  const ticks: Mark[] = [];
  for (let a = 0; a <= full; a += step) {
    const words = a === 0 ? "0" : figure(a, 0);
    const x = Math.max(at(a), widthOf(words) / 2);
    ticks.push(
      line([at(a), BAR.top + BAR.height], [at(a), BAR.top + BAR.height + 6], "fine"),
      text([x, BAR.top + BAR.height + 8 + ASCENT], words, { anchor: "middle" }),
    );
  }
  const ratingWords = `rating ${figure(input.rating_A, 1)} A`;
  const spare = input.rating_A - total;
  const top = BAR.top + BAR.height + 34;
  const first = paragraph([`existing (E), ${figure(input.existing_A, 1)} A: ${input.existing_words}`], 42, top - 2, WIDTH - 42);
  const title = input.title ?? "Load on the service";
  const verdict = spare < 0 ? `OVER THE RATING by ${figure(-spare, 1)} A` : `${figure(spare, 1)} A to spare`;
  const second = paragraph([`new, ${figure(input.added_A, 1)} A: ${input.added_words}`], 42, Math.max(first.bottom + 2, top + 18), WIDTH - 42, true);
  const third = paragraph([`Total ${figure(total, 1)} A of ${figure(input.rating_A, 1)} A: ${verdict}.`], 0, second.bottom + 4, WIDTH);
  const samples = [...sample(top, "thin", [-45], 7), ...sample(Math.max(first.bottom + 4, top + 20), "heavy", [-45, 45], 4)];
  return {
    title,
    alt: `${title}: existing ${figure(input.existing_A, 1)} A and new ${figure(input.added_A, 1)} A of ${figure(input.rating_A, 1)} A; ${verdict}.`,
    width: WIDTH,
    height: third.bottom + 4,
    marks: [
      ...part(0, input.existing_A, [-45], 8),
      ...part(input.existing_A, total, [-45, 45], 5),
      box(at(0), BAR.top, at(input.existing_A) - at(0), BAR.height, "thin"),
      box(at(input.existing_A), BAR.top, at(total) - at(input.existing_A), BAR.height, "heavy"),
      line([at(0), BAR.top + BAR.height], [BAR.right, BAR.top + BAR.height], "thin"),
      line([at(input.rating_A), BAR.top - 8], [at(input.rating_A), BAR.top + BAR.height + 8], "heavy"),
      text([at(input.rating_A) + 2, BAR.top - 12], ratingWords, { anchor: "end", bold: true }),
      ...ticks,
      text([WIDTH - 1, BAR.top + BAR.height + 8 + ASCENT], "A", { anchor: "end" }),
      ...samples,
      ...first.marks,
      ...second.marks,
      ...third.marks,
    ],
  };
}

function sample(y: number, weight: "thin" | "heavy", degrees: readonly number[], spacing: number): readonly Mark[] {
  const shape: readonly Point[] = [
    [1.5, y],
    [35, y],
    [35, y + 13],
    [1.5, y + 13],
  ];
  return [path(shape, weight, { closed: true }), ...degrees.flatMap((d) => hatchLines(shape, d, spacing).map(([a, b]) => line(a, b, "fine")))];
}
