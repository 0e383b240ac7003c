import type { Design } from "../designed.js";
import { decimal, print } from "../quantity.js";

/** One step of the work. At a hold nothing goes on until somebody has come or answered. Order and wording: common practice, no source. */
export interface WorkStep {
  readonly id: string;
  readonly says: string;
  readonly hold: boolean;
  /** Ids of the runs and segments it is about. */
  readonly from: readonly string[];
}

/** The steps in order, with what the design asks for and nothing that it does not. */
export function orderOfWork(design: Design): readonly WorkStep[] {
  const runs = [...design.feeders.filter((f) => !f.feeder.existing), ...design.circuits];
  const segments = runs.flatMap((run) => run.segments.map((segment, i) => ({ run, segment, id: `${run.run.id}.${i + 1}` })));
  const buried = segments.filter(({ segment }) => segment.segment.place === "buried");
  const inside = segments.filter(({ segment }) => segment.segment.place !== "buried");
  const raceways = segments.filter(({ segment }) => segment.tradeSize !== null);
  const boxes = runs.filter((run) => run.boxes.length > 0);
  const ids = (of: readonly { readonly id: string }[]) => of.map(({ id }) => id);
  const all = runs.map((run) => run.run.id);
  const failing = design.findings.filter((f) => f.verdict === "fail");
  const step = (id: string, says: string, from: readonly string[], hold = false): WorkStep => ({ id, says, hold, from });
  const when = (wanted: boolean, ...steps: readonly WorkStep[]) => (wanted ? steps : []);
  return [
    ...when(
      failing.length > 0,
      step("mend", `Mend the ${failing.length} finding${failing.length === 1 ? "" : "s"} that fail before anything is bought.`, [], true),
    ),
    step("permit", "Get the permit; keep the packet and the card on site. Begin nothing before.", all, true),
    ...when(
      buried.length > 0,
      step("call", "Call the one-call centre (811) and wait until every utility has marked or cleared the ground.", ids(buried), true),
      step(
        "trench",
        `Dig the trench: ${buried.map(({ run, segment }) => `${run.run.name}, ${segment.segment.name}: ${print(segment.segment.length)} ft, ${coverOf(segment)}`).join("; ")}.`,
        ids(buried),
      ),
      step("lay", "Lay what goes in the trench, with the depth to be seen along it.", ids(buried)),
      step("trench-inspection", "Call for the trench inspection. Do not cover before it has passed.", ids(buried), true),
      step("backfill", "Backfill with clean soil, lay the warning ribbon, photograph it with a rule beside it.", ids(buried)),
    ),
    ...when(inside.length > 0, step("rough", "Set the boxes, raceways and cables with their supports, and what passes through the wall.", ids(inside))),
    ...when(raceways.length > 0, step("pull", "Pull the conductors, all of one raceway together. Only raceway that is whole from end to end.", ids(raceways))),
    ...when(
      boxes.length > 0,
      step(
        "make-up",
        "Make up the boxes: grounds first, 6 in or more of free conductor.",
        boxes.map((run) => run.run.id),
      ),
    ),
    step("rough-inspection", "Call for the rough inspection. Close no wall and no box before it has passed.", all, true),
    step(
      "dead",
      "Switch off, lock, prove the tester, test, prove the tester again. The service conductors and the lugs ahead of the main stay live; panel work is for qualified persons.",
      all,
      true,
    ),
    step("terminate", "Connect breaker, panel and outlet: ground, neutral, hots.", all),
    ...when(
      design.feeders.length > 0,
      step(
        "neutral",
        "In each panel on a feeder keep neutral and ground apart: no bonding screw or strap.",
        design.feeders.map((f) => f.run.id),
      ),
    ),
    step("torque", "Tighten every terminal to its marked torque with a torque tool and write it in the record.", all),
    step("label", "Write the directory and set the labels.", all),
    step("dead-readings", "Take the readings with the power off: continuity of the ground, no path between conductors.", all, true),
    step("energize", "Switch on with nothing connected, only when the dead readings are in band.", all),
    step("live-readings", "Take the live readings; stop at any that is out of band. Press the test button where there is one.", all, true),
    step("final-inspection", "Call for the final inspection. Use it only when it has passed.", all, true),
  ];
}

function coverOf({ segment, leastCover }: Design["circuits"][number]["segments"][number]): string {
  const least = leastCover === null ? null : `${print(leastCover.value)} in at least`;
  if (segment.cover === undefined) return `cover ${least ?? "to be asked of the authority"}`;
  const planned = `cover ${print(segment.cover)} in`;
  return least === null || decimal(segment.cover).eq(leastCover!.value) ? planned : `${planned} (${least})`;
}
