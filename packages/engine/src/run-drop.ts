import { cite } from "./basis/citation.js";
import { type Edition, everyEdition } from "./basis/edition.js";
import type { DesignedRun } from "./designed.js";
import type { Job, Run } from "./job/schema.js";
import type { OutletNeeds } from "./outlet.js";
import { type Decimal, decimal, print } from "./quantity.js";
import { dropPercent, longestRuns, lostVolts, voltageDrop } from "./sizing/voltage-drop.js";
import { isCable, withinCable } from "./tables/cable.js";
import { compareSizes, SIZES, type Size } from "./tables/size.js";
import { worked } from "./worked.js";

export interface RunDropGiven {
  readonly run: Run;
  readonly needs: Pick<OutletNeeds, "volts" | "neutral">;
  readonly current: Decimal;
  readonly job: Job;
  readonly edition: Edition;
}

const LARGEST_RAISED: Size = "4/0";
const LEG_VOLTS = 120;
const WHOLE_WAY = { sections: everyEdition("215.2(A)(1) informational note"), standing: "memory" } as const;

/** Where there is a neutral the worst case is one leg with its whole return in it; else the voltage between the hots. */
const baseVolts = ({ needs }: RunDropGiven) => (needs.neutral ? LEG_VOLTS : needs.volts);

function chain({ run, current, job, edition }: RunDropGiven, sizes: readonly Size[]) {
  const segments = run.route.map((segment, i) => ({
    size: sizes[i]!,
    material: isCable(segment.method) ? ("copper" as const) : segment.conductors.material,
    feet: segment.length,
  }));
  return { current, segments, method: job.drop.method, edition };
}

/** The size of each segment: as given, else its least, raised together until the drop is within the job's limit. */
export function sizesWithinDrop(given: RunDropGiven, least: readonly (Size | null)[]): readonly Size[] {
  const sizesAt = (floor: Size) =>
    given.run.route.map((segment, i) => {
      const needed = least[i] ?? LARGEST_RAISED;
      return segment.conductors.size ?? withinCable(segment.method, compareSizes(needed, floor) < 0 ? floor : needed);
    });
  const allowed = decimal(baseVolts(given)).times(given.job.drop.limit_percent).div(100);
  const floors = SIZES.slice(SIZES.indexOf("14"), SIZES.indexOf(LARGEST_RAISED) + 1);
  return sizesAt(floors.find((floor) => lostVolts(chain(given, sizesAt(floor))).lte(allowed)) ?? "14");
}

/** The drop of a run at its sizes: balanced, on the worst leg, and from the service through what feeds it. */
export function runDrop(given: RunDropGiven, sizes: readonly Size[], upstream: DesignedRun | null): DesignedRun["drop"] {
  const { run, needs, job, edition } = given;
  const id = run.id;
  const amperes = print(given.current);
  const settled = chain(given, sizes);
  const balanced = voltageDrop({ id: `${id}.drop.balanced`, label: `Voltage drop at ${amperes} A, ${needs.volts} V between conductors`, ...settled });
  const oneLeg = needs.neutral && needs.volts === 240;
  const worstLeg = voltageDrop({
    id: `${id}.drop.worst`,
    label: oneLeg ? `Voltage drop at ${amperes} A, one 120 V leg loaded, all return in the neutral` : `Voltage drop at ${amperes} A`,
    ...settled,
  });
  const balancedPercent = dropPercent({
    id: `${id}.drop.balanced-percent`,
    label: `Drop, per cent of ${needs.volts} V`,
    drop: balanced,
    volts: needs.volts,
    edition,
  });
  const volts = baseVolts(given);
  const worstLegPercent = dropPercent({ id: `${id}.drop.worst-percent`, label: `Drop, per cent of ${volts} V`, drop: worstLeg, volts, edition });
  const above = upstream === null ? null : (upstream.drop.fromService ?? upstream.drop.worstLegPercent);
  const fromService =
    above === null
      ? null
      : worked({
          id: `${id}.drop.from-service`,
          label: "Drop from the service to the end of this run, each part at its own full load",
          value: decimal(above.value).plus(worstLegPercent.value).toFixed(),
          unit: "%",
          expression: `${print(above.value, 3)} % + ${print(worstLegPercent.value, 3)} %`,
          inputs: [above.id, worstLegPercent.id],
          citations: [cite(WHOLE_WAY, edition)!],
          edition,
        });
  const firstOpen = run.route.find((segment) => !isCable(segment.method)) ?? run.route[0]!;
  const longest = longestRuns({
    current: given.current,
    volts,
    limitPercent: job.drop.limit_percent,
    material: firstOpen.conductors.material,
    method: job.drop.method,
    edition,
    sizes: ["10", "8", "6", "4", "3", "2"],
  });
  return { balanced, balancedPercent, worstLeg, worstLegPercent, fromService, longest };
}
