import type { Edition } from "../basis/edition.js";
import type { Assumption } from "../designed.js";
import type { Job } from "../job/schema.js";
import type { Worked } from "../worked.js";
import { type FaultLevel, type FaultSegment, faultAtSource, faultBeyond } from "./fault-current.js";
import { type FaultSource, PRACTICE_X_OVER_R } from "./fault-source.js";
import { type LeastSource, type LeastSourceBasis, leastByRating, statedLeast } from "./least-source.js";

export const SYSTEM_VOLTS = 240;
/** Cold conductors let the most current through, which a breaker must interrupt; loaded ones the least, which must trip it. */
export const CELSIUS = { cold: 25, loaded: 75 } as const;

/** The three chains at one point of the tree; each null from where it cannot be worked. */
export interface FaultPoint {
  readonly lineToLine: FaultLevel | null;
  readonly lineToNeutral: FaultLevel | null;
  /** The ground-fault loop with loaded conductors, behind the least source. */
  readonly loop: FaultLevel | null;
}

export const FAULT_CHAINS = [
  { key: "lineToLine", id: "line-to-line", path: "line-to-line", celsius: CELSIUS.cold },
  { key: "lineToNeutral", id: "line-to-neutral", path: "line-to-neutral", celsius: CELSIUS.cold },
  { key: "loop", id: "loop", path: "line-to-ground", celsius: CELSIUS.loaded },
] as const;

export interface ServiceFault {
  /** At the service panel. */
  readonly point: FaultPoint;
  readonly steps: readonly Worked[];
  /** Where the least source, behind `point.loop`, was had from. */
  readonly leastBasis: LeastSourceBasis;
  readonly assumptions: readonly Assumption[];
}

const CHAIN = { lineToLine: FAULT_CHAINS[0], lineToNeutral: FAULT_CHAINS[1], loop: FAULT_CHAINS[2] } as const;

/** Making tolerance of a transformer's impedance, per cent either way (from memory); and what may lie ahead of it, per cent of its rating. */
const TOLERANCE = 10;
const PRACTICE_PRIMARY_PERCENT = 2;

/**
 * Fault current at the service panel. The greatest, for what has to interrupt it, by the utility's figure or its transformer and what runs
 * from it; the least, for what has to trip by it, by a figure or reading of its own or else by a bound. Null where nothing is given.
 */
export function serviceFault(job: Job, edition: Edition): ServiceFault | null {
  const found = sourceOf(job);
  const stated = statedLeast(job, edition);
  if (found === null && stated === null) return null;
  const lineToLine = found && chain(found, "lineToLine", edition);
  const lineToNeutral = found && chain(found, "lineToNeutral", edition);
  const least = stated === null ? leastOf(found!, job, edition) : { ...stated, steps: stated.level.steps };
  return {
    point: { lineToLine: lineToLine?.level ?? null, lineToNeutral: lineToNeutral?.level ?? null, loop: least.level },
    steps: [...(lineToLine?.steps ?? []), ...(lineToNeutral?.steps ?? []), ...least.steps],
    leastBasis: least.basis,
    assumptions: [...(found?.assumptions ?? []), ...least.assumptions],
  };
}

interface Found {
  readonly source: FaultSource;
  readonly stretches: readonly FaultSegment[];
  readonly assumptions: readonly Assumption[];
}
interface Chain {
  readonly level: FaultLevel | null;
  readonly steps: readonly Worked[];
}

/** From the source to the service panel by one path. */
function chain({ source, stretches }: Found, key: keyof FaultPoint, edition: Edition): Chain {
  const { id, path, celsius } = CHAIN[key];
  const given = { volts: SYSTEM_VOLTS, path, edition };
  const first = faultAtSource({ ...given, id: `service.fault.${id}.source`, source });
  if (stretches.length === 0) return { level: first, steps: first.steps };
  const segments = stretches.map((stretch) => ({ ...stretch, celsius }));
  const level = faultBeyond({ ...given, id: `service.fault.${id}`, at: "the service panel", before: first, segments });
  return { level, steps: [...first.steps, ...(level?.steps ?? [])] };
}

function leastOf(found: Found, job: Job, edition: Edition): Chain & Pick<LeastSource, "basis" | "assumptions"> {
  const { source } = found;
  if (source.kind === "transformer") {
    const weak: FaultSource = { ...source, tolerancePercent: -TOLERANCE, primaryPercent: PRACTICE_PRIMARY_PERCENT };
    const says = `for the tripping of breakers the transformer's impedance taken a tenth more than marked (tolerance of making, from memory) and ${PRACTICE_PRIMARY_PERCENT} % ahead of it (common practice, no source)`;
    return { ...chain({ ...found, source: weak }, "loop", edition), basis: "transformer", assumptions: [{ path: "service.fault", says }] };
  }
  const least = leastByRating(job.service.rating, chain(found, "loop", edition).level!, edition);
  return { ...least, steps: least.level.steps };
}

function sourceOf(job: Job): Found | null {
  const { fault, fault_current_kA } = job.service;
  const ratio = (xOverR: number | undefined): readonly Assumption[] =>
    xOverR === undefined ? [{ path: "service.fault", says: `X/R of the source taken as ${PRACTICE_X_OVER_R} (common practice, no source)` }] : [];
  if (fault?.transformer !== undefined) {
    const { kva, percent_z, x_over_r, conductors } = fault.transformer;
    const stretches = conductors.map((c) => ({
      name: c.name,
      material: c.material,
      conduit: c.raceway,
      feet: c.length,
      celsius: CELSIUS.cold,
      parallel: c.sets,
      hot: c.size,
      neutral: c.neutral ?? c.size,
      grounding: null,
      supplySide: true,
    }));
    return {
      source: { kind: "transformer", kVA: kva, percentZ: percent_z, tolerancePercent: TOLERANCE, ...(x_over_r === undefined ? {} : { xOverR: x_over_r }) },
      stretches,
      assumptions: [
        {
          path: "service.fault",
          says: "for what breakers interrupt the transformer taken on an unlimited primary and its impedance a tenth less than marked (tolerance of making, from memory), which gives the most fault current",
        },
        ...ratio(x_over_r),
      ],
    };
  }
  const kA = fault?.utility?.kA ?? fault_current_kA;
  if (kA === undefined) return null;
  const { line_to_neutral_kA, x_over_r } = fault?.utility ?? {};
  return {
    source: {
      kind: "utility",
      amperes: kA * 1000,
      lineToNeutralAmperes: (line_to_neutral_kA ?? kA) * 1000,
      ...(x_over_r === undefined ? {} : { xOverR: x_over_r }),
    },
    stretches: [],
    assumptions: [
      ...(line_to_neutral_kA === undefined
        ? [{ path: "service.fault", says: "the utility's fault current taken as the greatest at the service panel, line to line and to neutral" }]
        : []),
      ...ratio(x_over_r),
    ],
  };
}
