import type { Basis } from "./basis/basis.js";
import { designBoxes } from "./boxes.js";
import type { Assumption, DesignedRun } from "./designed.js";
import type { Job, Panel, Run } from "./job/schema.js";
import type { OutletNeeds } from "./outlet.js";
import { decimal, type Numeric } from "./quantity.js";
import { runDrop, sizesWithinDrop } from "./run-drop.js";
import { overcurrentRating } from "./sizing/overcurrent.js";
import { raiseOverPulls } from "./sizing/pull-groups.js";
import { designSegment, requiredSize, type SegmentGiven } from "./sizing/segment.js";
import type { Worked } from "./worked.js";

/** What a run must supply, whatever it is. */
export interface RunNeeds extends Pick<OutletNeeds, "volts" | "hots" | "neutral" | "gangs"> {
  readonly says: string;
  /** Amperes that flow for three hours or more, and the rest. */
  readonly continuous: Numeric;
  readonly noncontinuous: Numeric;
}

export interface RunGiven {
  readonly run: Run;
  readonly needs: RunNeeds;
  readonly load: Worked;
  readonly panel: Panel;
  /** The feeder this run hangs from, already designed; null at the service panel. */
  readonly upstream: DesignedRun | null;
  readonly job: Job;
  readonly basis: Basis;
}

/** Settles one run: overcurrent, each segment's least size, one raise for voltage drop over the open sizes, then the rest. */
export function designRun(given: RunGiven): { readonly designed: DesignedRun; readonly assumptions: readonly Assumption[] } {
  const { run, needs, job, basis, panel } = given;
  const edition = basis.edition;
  const id = run.id;
  const breaker = overcurrentRating({ id: `${id}.overcurrent`, continuous: needs.continuous, noncontinuous: needs.noncontinuous, edition });
  const rating = run.breaker.rating ?? Number(breaker.value);
  const load = decimal(needs.continuous).plus(needs.noncontinuous);
  const terminalLoad = decimal(needs.continuous).times("1.25").plus(needs.noncontinuous);
  // A fed panel that carries nothing yet is worked at its rating.
  const current = load.isZero() ? decimal(rating) : load;
  // 110.14(C)(1): 60 °C for 100 A and less unless everything the conductor ends on is listed and marked for 75 °C.
  const terminalC = panel.terminal_temperature === 75 && (run.terminals_75C || rating > 100) ? 75 : 60;
  const givens: SegmentGiven[] = run.route.map((segment, i) => ({
    id: `${id}.${i + 1}`,
    path: `${id}.route[${i}]`,
    segment,
    needs,
    rating,
    demand: { load, terminalLoad, overcurrent: rating },
    terminalC,
    basis,
  }));
  const least = raiseOverPulls(run, givens.map(requiredSize));
  const dropOf = { run, needs, current, job, edition };
  const sizes = sizesWithinDrop(dropOf, least);
  const settled = givens.map((segment, i) => designSegment(segment, least[i] ?? null, sizes[i]!, segment.segment.conductors.size ? "given" : "computed"));
  const segments = settled.map((s) => s.designed);
  const drop = runDrop(dropOf, sizes, given.upstream);
  const boxes = designBoxes(run, segments, needs, edition);
  const multiwire = needs.neutral && needs.volts === 240;
  return {
    designed: {
      run,
      panel: panel.id,
      serves: needs.says,
      volts: needs.volts,
      legVolts: 120,
      neutral: needs.neutral,
      terminalC,
      wires: (needs.hots + (needs.neutral ? 1 : 0) + 1) as 3 | 4,
      current: current.toFixed(),
      terminalLoad: terminalLoad.toFixed(),
      breaker,
      rating: String(rating),
      load: given.load,
      segments,
      drop,
      boxes,
      steps: [
        breaker,
        given.load,
        ...segments.flatMap((s) => s.steps),
        drop.balanced,
        drop.balancedPercent,
        ...(multiwire ? [drop.worstLeg, drop.worstLegPercent] : []),
        ...(drop.fromService ? [drop.fromService] : []),
        ...boxes.map((b) => b.required),
      ],
    },
    assumptions: settled.flatMap((s) => s.assumptions),
  };
}
