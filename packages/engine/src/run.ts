import type { Basis } from "./basis/basis.js";
import { boxAssumptions, boxSteps, designBoxes } from "./boxes.js";
import type { Assumption, DesignedRun } from "./designed.js";
import type { EquipmentNeeds } from "./equipment/equipment.js";
import type { Job, Panel, Run } from "./job/schema.js";
import { designPulls } from "./pulls.js";
import { decimal, type Numeric } from "./quantity.js";
import { runDrop, sizesWithinDrop } from "./run-drop.js";
import { runFault } from "./service/run-fault.js";
import type { FaultPoint } from "./service/service-fault.js";
import { type ConductorProtection, ORDINARY } from "./sizing/conductor.js";
import { leastRating } from "./sizing/overcurrent.js";
import { raiseOverPulls } from "./sizing/pull-groups.js";
import { designSegment, requiredSize, type SegmentGiven } from "./sizing/segment.js";
import type { Worked } from "./worked.js";

/** What a run must supply, whatever it is. */
export interface RunNeeds extends Pick<EquipmentNeeds, "volts" | "hots" | "neutral" | "gangs"> {
  readonly says: string;
  /** Amperes that flow for three hours or more, and the rest. */
  readonly continuous: Numeric;
  readonly noncontinuous: Numeric;
  /** What the equipment's own article sets otherwise; null where the load alone decides. */
  readonly equipment: {
    /** Amperes that the corrected ampacity, and the terminals, must carry. */
    readonly load: Numeric;
    readonly terminalLoad: Numeric;
    readonly breaker: Worked;
    readonly protection: ConductorProtection;
    /** Lines that stand before the breaker's and between it and the conductors'. */
    readonly steps: readonly Worked[];
    readonly loadSteps: readonly Worked[];
  } | null;
}

export interface RunGiven {
  readonly run: Run;
  readonly needs: RunNeeds;
  readonly load: Worked;
  readonly panel: Panel;
  /** The feeder this run hangs from, already designed; null at the service panel. */
  readonly upstream: DesignedRun | null;
  /** Fault currents at the panel it leaves; null where no source is given. */
  readonly faultAtPanel: FaultPoint | null;
  readonly job: Job;
  readonly basis: Basis;
}

/** Settles one run: overcurrent, each segment's least size, one raise for voltage drop over the open sizes, then the rest. */
export function designRun(given: RunGiven): { readonly designed: DesignedRun; readonly assumptions: readonly Assumption[] } {
  const { run, needs, job, basis, panel } = given;
  const edition = basis.edition;
  const id = run.id;
  const { equipment } = needs;
  const kind = equipment === null ? "feeder" : "branch";
  const breaker =
    equipment?.breaker ?? leastRating({ id: `${id}.overcurrent`, continuous: needs.continuous, noncontinuous: needs.noncontinuous, of: kind, edition });
  const rating = run.breaker.rating ?? Number(breaker.value);
  const load = decimal(needs.continuous).plus(needs.noncontinuous);
  const terminalLoad = decimal(equipment?.terminalLoad ?? decimal(needs.continuous).times("1.25").plus(needs.noncontinuous));
  const protection = equipment?.protection ?? ORDINARY;
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
    demand: { load: equipment?.load ?? load, terminalLoad, overcurrent: rating, protection },
    terminalC,
    // Column 4 asks protection ahead of the earth: a device at the outlet leaves the buried conductors without.
    small120V: needs.volts === 120 && rating <= 20 && run.breaker.gfci,
    basis,
  }));
  const least = raiseOverPulls(run, givens.map(requiredSize));
  const dropOf = { run, needs, kind, current, rating, job, edition } as const;
  const sizes = sizesWithinDrop(dropOf, least);
  const settled = givens.map((segment, i) => designSegment(segment, least[i] ?? null, sizes[i]!, segment.segment.conductors.size ? "given" : "computed"));
  const segments = settled.map((s) => s.designed);
  const { drop, assumptions: dropAssumptions } = runDrop(dropOf, sizes, least, given.upstream);
  const { hots, neutral } = needs;
  const fault = given.faultAtPanel && runFault({ id, name: run.name, start: given.faultAtPanel, segments, hots, neutral, breaker: rating, edition });
  const pulls = designPulls(run, segments, edition);
  const boxes = designBoxes(run, segments, needs, edition);
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
      pulls,
      drop,
      fault,
      boxes,
      protection,
      steps: [
        ...(equipment?.steps ?? []),
        breaker,
        ...(equipment?.loadSteps ?? []),
        given.load,
        ...segments.flatMap((s) => s.steps),
        ...drop.steps,
        ...(fault?.steps ?? []),
        ...pulls.flatMap((p) => p.steps),
        ...boxes.flatMap(boxSteps),
      ],
    },
    assumptions: [...settled.flatMap((s) => s.assumptions), ...dropAssumptions, ...boxAssumptions(run, boxes)],
  };
}
