import { type Design, print } from "@branchwork/engine";
import { svgOfDrawing } from "../drawing/marks-svg.js";
import { drawSitePlan } from "../drawing/site-plan.js";
import { runsOf } from "../drawing/tags.js";
import { type Draft, drawing, paragraph, table } from "./packet.js";
import { type DrawingRoom, PAPER_SIZES } from "./paper.js";
import { SHEETS } from "./sheet-titles.js";

const VERDICTS: Readonly<Record<string, string>> = {
  agrees: "agrees",
  "stated-shorter": "the job states less than the plan shows: measure again",
  "stated-longer": "the job states more than the plan shows: measure again, or say what the rises are",
  "not-stated": "no length stated",
  "not-drawn": "not drawn",
};

/** What the table of lengths and the remark under it take where they stand below the plan, in points. */
const BELOW = { table: 78, row: 18 } as const;

/** More go on the next page. */
const MOST_ROWS = 6;

const feet = (value: number | null) => (value === null ? "none" : `${print(value, 1)} ft`);

/**
 * The site plan to scale with the lengths it shows beside those the job states; null where the job gives no plan. It is drawn in the
 * room under a stamp where it loses neither scale nor words there; what stands below it then goes on.
 */
export function sitePlanSheet(design: Design, room: DrawingRoom, underStamp: DrawingRoom | null = null): Draft | null {
  const site = design.job.site_plan;
  if (site === undefined) return null;
  // On large paper the lengths stand at the right of the plan.
  const beside = room.width > PAPER_SIZES.letter.room.width;
  const draw = (frame: DrawingRoom) =>
    drawSitePlan({
      lot: site.lot,
      outlines: site.outlines,
      points: site.points,
      routes: site.routes.map(({ rises, ...route }) => ({ ...route, ...(rises === undefined ? {} : { rises_ft: rises }) })),
      overhead: site.overhead,
      north_degrees: site.north,
      ...(site.scale_note === undefined ? {} : { scale_note: site.scale_note }),
      frame,
      stated: runsOf(design).flatMap((run) => run.segments.map((s) => ({ circuit: run.run.id, segment: s.segment.name, length_ft: s.segment.length }))),
    });
  const whole = draw(beside ? room : { width: room.width, height: room.height - BELOW.table - BELOW.row * Math.min(MOST_ROWS, site.routes.length) });
  const less = underStamp === null ? whole : draw(underStamp);
  const plan = less.scale === whole.scale && less.unplaced.length <= whole.unplaced.length ? less : whole;
  const drawn = plan.comparison.filter((row) => row.verdict !== "not-drawn");
  return {
    title: SHEETS.site,
    blocks: [
      drawing(svgOfDrawing(plan.drawing, "site-plan"), room),
      ...(plan.unplaced.length === 0 ? [] : [paragraph(`No room on the plan for: ${plan.unplaced.join("; ")}.`)]),
      table(
        "Lengths by the plan and by the job",
        ["Segment", "By the plan", "By the job", "Compared"],
        drawn.map((row) => [row.segment, feet(row.drawn_ft), feet(row.stated_ft), VERDICTS[row.verdict] ?? row.verdict]),
      ),
      paragraph("Drawn from the preparer's own measurements; not a survey. Have buried utilities marked before digging."),
    ],
  };
}
