import type { Run, Segment } from "../job/schema.js";
import { isCable } from "../tables/cable.js";
import { compareSizes, type Size } from "../tables/size.js";

/** Whether two stretches that follow one another are one pull: raceways, no box between, the same conductors. Splices only in boxes, 300.15. */
export function isOnePull(run: Run, before: Segment, after: Segment): boolean {
  const alike =
    before.conductors.insulation === after.conductors.insulation &&
    before.conductors.material === after.conductors.material &&
    (before.sets ?? 1) === (after.sets ?? 1);
  return !boxBetween(run, before) && alike && !isCable(before.method) && !isCable(after.method);
}

/** Whether a cable goes on from one stretch into the next. */
const isOneCable = (run: Run, before: Segment, after: Segment) => isCable(before.method) && before.method === after.method && !boxBetween(run, before);

const boxBetween = (run: Run, before: Segment) => run.boxes.some((box) => box.after === before.name);

/** Least sizes raised so that a pull, and a cable, has one size throughout: the largest any part of it needs. null stays where nothing serves. */
export function raiseOverPulls(run: Run, least: readonly (Size | null)[]): (Size | null)[] {
  const raised = [...least];
  const larger = (a: Size | null, b: Size | null) => (a === null || b === null ? null : compareSizes(a, b) >= 0 ? a : b);
  const join = (i: number, j: number) => {
    const [one, other] = [run.route[Math.min(i, j)]!, run.route[Math.max(i, j)]!];
    if (isOnePull(run, one, other) || isOneCable(run, one, other)) raised[j] = larger(raised[j]!, raised[i]!);
  };
  for (let i = 1; i < raised.length; i++) join(i - 1, i);
  for (let i = raised.length - 1; i > 0; i--) join(i, i - 1);
  return raised;
}

/** Which stretches of a route are drawn in together: indices of each pull, cables left out. */
export function pullsOf(run: Run): readonly (readonly number[])[] {
  const pulls: number[][] = [];
  for (const [i, segment] of run.route.entries()) {
    if (isCable(segment.method)) continue;
    const before = run.route[i - 1];
    const last = pulls.at(-1);
    if (last !== undefined && before !== undefined && isOnePull(run, before, segment)) last.push(i);
    else pulls.push([i]);
  }
  return pulls;
}
