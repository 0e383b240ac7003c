import { type Design, print } from "@branchwork/engine";
import { svgOfDrawing } from "../drawing/marks-svg.js";
import { drawSitePlan } from "../drawing/site-plan.js";
import { runsOf } from "../drawing/tags.js";
import { type Draft, drawing, paragraph, table } from "./packet.js";
import { SHEETS } from "./sheet-titles.js";

const VERDICTS: Readonly<Record<string, string>> = {
  agrees: "agrees",
  "stated-shorter": "the job states less than the plan shows: measure again",
  "stated-longer": "the job states more than the plan shows: measure again, or say what the rises are",
  "not-stated": "no length stated",
  "not-drawn": "not drawn",
};

/** Leaves room below for the table of lengths, in points. */
const FRAME = { width: 522, height: 440 } as const;

const feet = (value: number | null) => (value === null ? "none" : `${print(value, 1)} ft`);

/** The site plan to scale with the lengths it shows beside those the job states; null where the job gives no plan. */
export function sitePlanSheet(design: Design): Draft | null {
  const site = design.job.site_plan;
  if (site === undefined) return null;
  const plan = drawSitePlan({
    lot: site.lot,
    outlines: site.outlines,
    points: site.points,
    routes: site.routes.map(({ rises, ...route }) => ({ ...route, ...(rises === undefined ? {} : { rises_ft: rises }) })),
    overhead: site.overhead,
    north_degrees: site.north,
    ...(site.scale_note === undefined ? {} : { scale_note: site.scale_note }),
    frame: FRAME,
    stated: runsOf(design).flatMap((run) => run.segments.map((s) => ({ circuit: run.run.id, segment: s.segment.name, length_ft: s.segment.length }))),
  });
  const drawn = plan.comparison.filter((row) => row.verdict !== "not-drawn");
  return {
    title: SHEETS.site,
    blocks: [
      drawing(svgOfDrawing(plan.drawing, "site-plan")),
      ...(plan.unplaced.length === 0 ? [] : [paragraph(`No room on the plan for: ${plan.unplaced.join("; ")}.`)]),
      table(
        "Lengths by the plan and by the job",
        ["Segment", "By the plan", "By the job", ""],
        drawn.map((row) => [row.segment, feet(row.drawn_ft), feet(row.stated_ft), VERDICTS[row.verdict] ?? row.verdict]),
      ),
      paragraph("Drawn from the preparer's own measurements; not a survey. Have buried utilities marked before digging."),
    ],
  };
}
