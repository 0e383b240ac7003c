import type { Edition } from "../basis/edition.js";
import type { Assumption } from "../designed.js";
import type { Job } from "../job/schema.js";
import type { Worked } from "../worked.js";
import { type FaultLevel, type FaultSegment, faultAtSource, faultBeyond } from "./fault-current.js";
import { type FaultSource, PRACTICE_X_OVER_R } from "./fault-source.js";

export const SYSTEM_VOLTS = 240;
/** Cold conductors let the most current through, which a breaker must interrupt; loaded ones the least, which must trip it. */
export const CELSIUS = { cold: 25, loaded: 75 } as const;

/** The three chains at one point of the tree; each null from where it cannot be worked. */
export interface FaultPoint {
  readonly lineToLine: FaultLevel | null;
  readonly lineToNeutral: FaultLevel | null;
  /** The ground-fault loop with loaded conductors. */
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
  readonly assumptions: readonly Assumption[];
}

/** The fault current at the service panel, by the utility's figure or its transformer and what runs from it; null where none is given. */
export function serviceFault(job: Job, edition: Edition): ServiceFault | null {
  const found = sourceOf(job);
  if (found === null) return null;
  const { source, stretches, assumptions } = found;
  const chains = FAULT_CHAINS.map(({ key, id, path, celsius }) => {
    const given = { volts: SYSTEM_VOLTS, path, edition };
    const first = faultAtSource({ ...given, id: `service.fault.${id}.source`, source });
    if (stretches.length === 0) return { key, level: first, steps: first.steps };
    const level = faultBeyond({
      ...given,
      id: `service.fault.${id}`,
      at: "the service panel",
      before: first,
      segments: stretches.map((stretch) => ({ ...stretch, celsius })),
    });
    return { key, level, steps: [...first.steps, ...(level?.steps ?? [])] };
  });
  const at = (key: keyof FaultPoint) => chains.find((chain) => chain.key === key)?.level ?? null;
  return {
    point: { lineToLine: at("lineToLine"), lineToNeutral: at("lineToNeutral"), loop: at("loop") },
    steps: chains.flatMap((chain) => chain.steps),
    assumptions,
  };
}

function sourceOf(job: Job): { source: FaultSource; stretches: readonly FaultSegment[]; assumptions: readonly Assumption[] } | null {
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
      source: { kind: "transformer", kVA: kva, percentZ: percent_z, ...(x_over_r === undefined ? {} : { xOverR: x_over_r }) },
      stretches,
      assumptions: [
        { path: "service.fault", says: "transformer taken on an unlimited primary, which gives the most fault current; its nameplate impedance taken whole" },
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
