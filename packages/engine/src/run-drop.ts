import { cite } from "./basis/citation.js";
import { type Edition, everyEdition } from "./basis/edition.js";
import type { Assumption, DesignedRun } from "./designed.js";
import type { EquipmentNeeds } from "./equipment/equipment.js";
import type { Job, Run } from "./job/schema.js";
import { type Decimal, decimal, print } from "./quantity.js";
import { acDrop, acLostVolts } from "./sizing/ac-drop.js";
import { longestAcRuns } from "./sizing/ac-longest-run.js";
import { type AcDropMethod, isAcMethod } from "./sizing/drop-method.js";
import { groundingConductor } from "./sizing/grounding.js";
import { TABLE_CELSIUS } from "./sizing/resistance.js";
import { type DropMethod, dropPercent, longestRuns, lostVolts, voltageDrop } from "./sizing/voltage-drop.js";
import { CABLE_GROUNDING, isCable, withinCable } from "./tables/cable.js";
import { conduitMaterial } from "./tables/impedance.js";
import { compareSizes, SIZES, type Size } from "./tables/size.js";
import { type Worked, worked } from "./worked.js";

export interface RunDropGiven {
  readonly run: Run;
  readonly needs: Pick<EquipmentNeeds, "volts" | "neutral">;
  readonly kind: "branch" | "feeder";
  readonly current: Decimal;
  /** Of the overcurrent device, A. */
  readonly rating: number;
  readonly job: Job;
  readonly edition: Edition;
}

const LARGEST_RAISED: Size = "4/0";
const LONGEST_OF: readonly Size[] = ["10", "8", "6", "4", "3", "2"];
const LEAST_TOLD = 3;
const LEG_VOLTS = 120;
/** A load that draws no reactive current: for conductors of a house circuit it gives the greater drop. */
const UNITY = 1;
const WHOLE_WAY = { sections: everyEdition("215.2(A)(1) informational note"), standing: "memory" } as const;

/** Where there is a neutral the worst case is one leg with its whole return in it; else the voltage between the hots. */
const baseVolts = ({ needs }: RunDropGiven) => (needs.neutral ? LEG_VOLTS : needs.volts);
const materialOf = (segment: Run["route"][number]) => (isCable(segment.method) ? ("copper" as const) : segment.conductors.material);
const celsiusOf = (job: Job) => job.drop.conductor_temperature ?? TABLE_CELSIUS;

type Through = "hots" | "neutral";
const neutralOf = ({ conductors: { neutral } }: Run["route"][number], through: Through) => (neutral === undefined || through === "hots" ? {} : { neutral });

/** The chain by direct-current resistance or by K; what an alternating-current method falls back on. */
function plainChain({ run, current, job, edition }: RunDropGiven, sizes: readonly Size[], through: Through) {
  const segments = run.route.map((segment, i) => ({
    size: sizes[i]!,
    ...neutralOf(segment, through),
    material: materialOf(segment),
    feet: segment.length,
    ...(segment.sets === undefined ? {} : { parallel: segment.sets }),
  }));
  const { method } = job.drop;
  return { current, segments, method: isAcMethod(method) ? ("dc-resistance" as DropMethod) : method, celsius: celsiusOf(job), edition };
}

function acChain({ run, current, job, edition }: RunDropGiven, sizes: readonly Size[], method: AcDropMethod) {
  const segments = run.route.map((segment, i) => ({
    size: sizes[i]!,
    ...neutralOf(segment, "neutral"),
    material: materialOf(segment),
    conduit: conduitMaterial(segment.method),
    feet: segment.length,
    celsius: celsiusOf(job),
    ...(segment.sets === undefined ? {} : { parallel: segment.sets }),
  }));
  return { current, segments, method, powerFactor: job.drop.power_factor ?? UNITY, edition };
}

/** Volts lost by the job's method, or by direct-current resistance where Table 9 gives none. */
function volts(given: RunDropGiven, sizes: readonly Size[]): Decimal {
  const { method } = given.job.drop;
  const found = isAcMethod(method) ? acLostVolts({ ...acChain(given, sizes, method), sourceVolts: baseVolts(given) }) : null;
  return found ?? lostVolts(plainChain(given, sizes, given.needs.neutral ? "neutral" : "hots"));
}

/**
 * The size of each segment: as given, else its least, raised together until the drop is within the job's limit. A cable is raised no
 * further than its own equipment grounding conductor serves, 250.122(B): else the raise, which is advice, would break a rule.
 */
export function sizesWithinDrop(given: RunDropGiven, least: readonly (Size | null)[]): readonly Size[] {
  const sizesAt = (floor: Size) =>
    given.run.route.map((segment, i) => {
      const needed = least[i] ?? LARGEST_RAISED;
      if (segment.conductors.size) return segment.conductors.size;
      const raised = compareSizes(needed, floor) < 0 ? floor : needed;
      return isCable(segment.method) ? raisedCable(given, withinCable(segment.method, needed), withinCable(segment.method, raised)) : raised;
    });
  const allowed = decimal(baseVolts(given)).times(given.job.drop.limit_percent).div(100);
  const floors = SIZES.slice(SIZES.indexOf("14"), SIZES.indexOf(LARGEST_RAISED) + 1);
  return sizesAt(floors.find((floor) => volts(given, sizesAt(floor)).lte(allowed)) ?? "14");
}

/** The largest size from the least to the raised at which the cable's own grounding conductor keeps its proportion. */
function raisedCable({ rating, edition }: RunDropGiven, leastSize: Size, raised: Size): Size {
  const between = SIZES.slice(SIZES.indexOf(leastSize) + 1, SIZES.indexOf(raised) + 1);
  const serves = (usedSize: Size) => {
    const has = CABLE_GROUNDING[usedSize];
    const needed = groundingConductor({ id: "candidate", overcurrent: rating, material: "copper", leastSize, usedSize, edition }).size;
    return has !== undefined && compareSizes(has, needed) >= 0;
  };
  return between.findLast(serves) ?? leastSize;
}

interface Drop {
  readonly drop: Worked;
  readonly steps: readonly Worked[];
  readonly fellBack: boolean;
}

/** One drop by the job's method; by direct-current resistance where Table 9 lacks a conductor or cannot drive the current. */
function oneDrop(given: RunDropGiven, sizes: readonly Size[], of: { id: string; label: string; sourceVolts: number; through: Through }): Drop {
  const { method } = given.job.drop;
  const ac = isAcMethod(method) ? acDrop({ ...acChain(given, sizes, method), ...of }) : null;
  if (ac !== null) return { drop: ac.drop, steps: [ac.resistance, ac.reactance, ac.drop], fellBack: false };
  const drop = voltageDrop({ id: of.id, label: of.label, ...plainChain(given, sizes, of.through) });
  return { drop, steps: [drop], fellBack: isAcMethod(method) };
}

/** The drop of a run at its sizes: balanced, on the worst leg, and from the service through what feeds it. */
export function runDrop(
  given: RunDropGiven,
  sizes: readonly Size[],
  least: readonly (Size | null)[],
  upstream: DesignedRun | null,
): { readonly drop: DesignedRun["drop"]; readonly assumptions: readonly Assumption[] } {
  const { run, needs, edition } = given;
  const id = run.id;
  const amperes = print(given.current);
  const base = baseVolts(given);
  const balanced = oneDrop(given, sizes, {
    id: `${id}.drop.balanced`,
    label: `Voltage drop at ${amperes} A, ${needs.volts} V between conductors`,
    sourceVolts: needs.volts,
    through: "hots",
  });
  const oneLeg = needs.neutral && needs.volts === 240;
  const worstLeg = oneDrop(given, sizes, {
    id: `${id}.drop.worst`,
    label: oneLeg ? `Voltage drop at ${amperes} A, one 120 V leg loaded, all return in the neutral` : `Voltage drop at ${amperes} A`,
    sourceVolts: base,
    through: needs.neutral ? "neutral" : "hots",
  });
  const percent = (key: string, { drop }: Drop, of: number) =>
    dropPercent({ id: `${id}.drop.${key}`, label: `Drop, per cent of ${of} V`, drop, volts: of, of: given.kind, edition });
  const balancedPercent = percent("balanced-percent", balanced, needs.volts);
  const worstLegPercent = percent("worst-percent", worstLeg, base);
  const wholeWay = (key: string, says: string, above: Worked, own: Worked) =>
    worked({
      id: `${id}.drop.${key}`,
      label: `Drop from the service to the end of this run${says}, each part at its own full load`,
      value: decimal(above.value).plus(own.value).toFixed(),
      unit: "%",
      expression: `${print(above.value, 3)} % + ${print(own.value, 3)} %`,
      inputs: [above.id, own.id],
      citations: [cite(WHOLE_WAY, edition)!],
      edition,
    });
  const aboveHots = upstream === null ? null : (upstream.drop.fromServiceHots ?? upstream.drop.balancedPercent);
  const aboveLeg = upstream === null ? null : (upstream.drop.fromService ?? upstream.drop.worstLegPercent);
  // What is connected between the hots alone loses nothing in the feeder's neutral.
  const fromServiceHots = aboveHots === null || needs.volts !== 240 ? null : wholeWay("from-service-hots", ", between the hots", aboveHots, balancedPercent);
  const fromService = needs.neutral ? aboveLeg && wholeWay("from-service", "", aboveLeg, worstLegPercent) : fromServiceHots;
  const further = given.kind === "feeder" && fromServiceHots !== null ? [fromServiceHots] : [];
  return {
    drop: {
      balanced: balanced.drop,
      balancedPercent,
      worstLeg: worstLeg.drop,
      worstLegPercent,
      fromService,
      fromServiceHots,
      longest: longest(given, least),
      steps: [...balanced.steps, balancedPercent, ...(oneLeg ? [...worstLeg.steps, worstLegPercent] : []), ...(fromService ? [fromService] : []), ...further],
    },
    assumptions: assumed(given, balanced.fellBack || worstLeg.fellBack),
  };
}

/** By the sizes that may serve at all: from the least that the run itself needs. */
function longest(given: RunDropGiven, least: readonly (Size | null)[]): DesignedRun["drop"]["longest"] {
  const { run, job, edition } = given;
  const largestLeast = least.reduce<Size>((a, b) => (b !== null && compareSizes(b, a) > 0 ? b : a), "14");
  const from = SIZES.indexOf(largestLeast);
  const lawful = LONGEST_OF.filter((size) => compareSizes(size, largestLeast) >= 0);
  const sizes = lawful.length >= LEAST_TOLD ? lawful : SIZES.slice(from, from + LONGEST_OF.length);
  const like = run.route.find((segment) => !isCable(segment.method)) ?? run.route[0]!;
  const of = { current: given.current, limitPercent: job.drop.limit_percent, edition, sizes };
  const { method } = job.drop;
  const plain = () => {
    const { method: by, celsius } = plainChain(given, [], "hots");
    return longestRuns({ ...of, volts: baseVolts(given), material: materialOf(like), method: by, celsius });
  };
  if (!isAcMethod(method)) return plain();
  const runs = longestAcRuns({
    ...of,
    sourceVolts: baseVolts(given),
    powerFactor: job.drop.power_factor ?? UNITY,
    method,
    like: { material: materialOf(like), conduit: conduitMaterial(like.method), celsius: celsiusOf(job) },
  });
  return runs.flatMap(({ size, feet }) => (feet === null ? [] : [{ size, feet }]));
}

function assumed({ run, job }: RunDropGiven, fellBack: boolean): readonly Assumption[] {
  const { method, power_factor, conductor_temperature } = job.drop;
  if (!isAcMethod(method)) return [];
  const path = `${run.id}.drop`;
  return [
    ...(power_factor === undefined ? [{ path, says: `${run.name}: voltage drop at a power factor of 1` }] : []),
    ...(conductor_temperature === undefined ? [{ path, says: `${run.name}: voltage drop with conductors at ${TABLE_CELSIUS} °C` }] : []),
    ...(fellBack
      ? [
          {
            path,
            says: `${run.name}: voltage drop by direct-current resistance, since Table 9 has no such conductor or the run is too long for the ${method} method`,
          },
        ]
      : []),
  ];
}
