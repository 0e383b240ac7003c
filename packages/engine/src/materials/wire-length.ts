import { cite, citeOther } from "../basis/citation.js";
import { everyEdition } from "../basis/edition.js";
import { type Decimal, decimal, print } from "../quantity.js";
import { isCable } from "../tables/cable.js";
import { printSize } from "../tables/size.js";
import { feet, type Piece, some } from "./piece.js";
import type { End, Stretch } from "./stretch.js";

const FREE_CONDUCTOR = { sections: everyEdition("300.14"), standing: "memory" } as const;

/** Feet added where conductors end: at a panel its make-up, at a box or equipment the free conductor, nothing where the pull goes on. */
function makeUp(end: End, { allowances: a }: Stretch): { readonly feet: Decimal; readonly term: string } | null {
  if (end === "joined") return null;
  return end === "panel"
    ? { feet: decimal(a.panelMakeUpFt), term: `${print(a.panelMakeUpFt)} ft` }
    : { feet: decimal(a.freeConductorIn).div(12), term: `${print(a.freeConductorIn)} / 12 ft` };
}

/** Length of one conductor of a stretch as bought, ft: (length with slack + make-up at each end) with waste. */
export function conductorFeet(stretch: Stretch): { readonly feet: Decimal; readonly expression: string } {
  const { allowances: a, segment } = stretch;
  const slack = decimal(a.slackPercent).div(100).plus(1);
  const waste = decimal(a.wastePercent).div(100).plus(1);
  const ends = some([makeUp(stretch.start, stretch), makeUp(stretch.end, stretch)]);
  const length = ends.reduce((sum, end) => sum.plus(end.feet), decimal(segment.segment.length).times(slack));
  const terms = [`${print(segment.segment.length, 6)} ft × ${slack.toFixed()}`, ...ends.map((end) => end.term)];
  return { feet: length.times(waste), expression: `(${terms.join(" + ")}) × ${waste.toFixed()}` };
}

/** Conductors of a stretch by role, or its cable: hots, neutral and ground keep their own rows, as they are bought in their own colours. */
export function wirePieces(stretch: Stretch): readonly Piece[] {
  const { segment, run, id, edition } = stretch;
  const { conductor, grounding } = segment;
  const { material, insulation } = segment.segment.conductors;
  const one = conductorFeet(stretch);
  const citations = [cite(FREE_CONDUCTOR, edition)!, citeOther("Common practice", "slack, waste and make-up", "practice")];
  if (one.feet.isZero()) return [];
  if (isCable(segment.segment.method)) {
    const cable = `${segment.segment.method} ${conductor.size}/${conductor.count}`;
    return some([feet(`cable ${cable}`, `${cable} with ground, copper cable`, one.feet, one.expression, id, { citations })]);
  }
  const hots = conductor.count - (run.neutral ? 1 : 0);
  const wire = (role: string, size: typeof conductor.size, count: number) =>
    count === 0
      ? null
      : feet(
          `wire ${material} ${insulation} ${size}`,
          `${printSize(size)} ${insulation} ${material}, ${role}`,
          one.feet.times(count),
          count === 1 ? one.expression : `${count} × ${one.expression}`,
          id,
          { citations },
        );
  return some([
    wire(hots === 1 ? "hot" : "hots", conductor.size, hots),
    wire("neutral", segment.neutral?.size ?? conductor.size, run.neutral ? 1 : 0),
    wire("equipment ground", grounding.size, 1),
  ]);
}
