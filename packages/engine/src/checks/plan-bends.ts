import { isCable } from "../tables/cable.js";
import type { Check, Outcome } from "./finding.js";
import { caution, eachSegment, notApplicable, pass } from "./outcome.js";

type Place = readonly [number, number];

/** A turn smaller than this is a sweep of the raceway itself or a slip of the pencil. */
const LEAST_TURN = 10;

/** A raceway that turns on the site plan turns by bends, and those count in the pull. Common practice, no source. */
export const planBends: Check = {
  id: "plan-bends",
  title: "The bends of a run are those of its way on the site plan",
  rule: null,
  run: eachSegment(({ segment, bendTotal }, { run }, subject, { job }): Outcome => {
    const route = job.site_plan?.routes.find((one) => one.circuit === run.id && one.segment === segment.name);
    if (route === undefined || isCable(segment.method)) return notApplicable(subject, "no raceway of it is drawn on a site plan");
    const turned = turnsOf(route.points);
    return turned > bendTotal + LEAST_TURN
      ? caution(
          subject,
          `its way turns ${Math.round(turned)}° on the site plan, its bends come to ${bendTotal}°`,
          "write every bend of the stretch (bends), those of the plan and those up and down: they count to 360° and in the pull",
        )
      : pass(subject, `bends of ${bendTotal}°, turns of ${Math.round(turned)}° on the site plan`);
  }),
};

/** Degrees a way turns in all, from stretch to stretch. */
function turnsOf(points: readonly Place[]): number {
  const headings = points.slice(1).flatMap((to, i) => {
    const from = points[i]!;
    return to[0] === from[0] && to[1] === from[1] ? [] : [(Math.atan2(to[1] - from[1], to[0] - from[0]) * 180) / Math.PI];
  });
  return headings.slice(1).reduce((sum, heading, i) => {
    const turn = Math.abs(((heading - headings[i]! + 540) % 360) - 180);
    return turn < LEAST_TURN ? sum : sum + turn;
  }, 0);
}
