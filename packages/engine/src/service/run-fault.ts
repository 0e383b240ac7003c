import type { Edition } from "../basis/edition.js";
import type { DesignedSegment, RunFault } from "../designed.js";
import { isCable } from "../tables/cable.js";
import { conduitMaterial } from "../tables/impedance.js";
import { type FaultSegment, faultBeyond } from "./fault-current.js";
import { loopAtBreaker } from "./fault-loop.js";
import { FAULT_CHAINS, type FaultPoint, SYSTEM_VOLTS } from "./service-fault.js";

/**
 * Fault current of a run in amperes, at the panel it leaves and at its end, and its ground-fault loop against its breaker. A run with
 * one hot has nothing line to line at its end; one without a neutral nothing to neutral.
 */
export function runFault(given: {
  readonly id: string;
  readonly name: string;
  readonly start: FaultPoint;
  readonly segments: readonly DesignedSegment[];
  readonly hots: 1 | 2;
  readonly neutral: boolean;
  readonly breaker: number;
  readonly edition: Edition;
}): RunFault {
  const { id, start, edition } = given;
  const beyond = ({ key, id: chain, path, celsius }: (typeof FAULT_CHAINS)[number]) => {
    const before = start[key];
    const there = key === "lineToLine" ? given.hots === 2 : key === "lineToNeutral" ? given.neutral : true;
    if (before === null || !there) return null;
    const segments = given.segments.map((segment) => faultSegment(segment, given.neutral, celsius));
    return faultBeyond({ id: `${id}.fault.${chain}`, at: `the end of ${given.name}`, before, segments, volts: SYSTEM_VOLTS, path, edition });
  };
  const [lineToLine, lineToNeutral, loop] = FAULT_CHAINS.map(beyond) as [FaultPoint["lineToLine"], FaultPoint["lineToNeutral"], FaultPoint["loop"]];
  const judged = loop === null ? null : loopAtBreaker({ id: `${id}.fault.loop`, loop, breaker: given.breaker, edition });
  return {
    start,
    end: { lineToLine, lineToNeutral, loop },
    atStart: { lineToLine: start.lineToLine?.amperes ?? null, lineToNeutral: start.lineToNeutral?.amperes ?? null },
    atEnd: { lineToLine: lineToLine?.amperes ?? null, lineToNeutral: lineToNeutral?.amperes ?? null },
    loop: judged && { amperes: judged.loop.amperes, multiple: judged.multiple, trips: judged.trips, result: judged.result },
    steps: [lineToLine, lineToNeutral, loop]
      .flatMap((level) => level?.steps ?? [])
      .concat(judged ? [judged.multiple, ...judged.trips.map((t) => t.amperes)] : []),
  };
}

function faultSegment(designed: DesignedSegment, neutral: boolean, celsius: number): FaultSegment {
  const { segment, conductor, grounding } = designed;
  const material = isCable(segment.method) ? "copper" : segment.conductors.material;
  return {
    name: segment.name,
    material,
    conduit: conduitMaterial(segment.method),
    feet: segment.length,
    celsius,
    parallel: designed.sets,
    hot: conductor.size,
    neutral: neutral ? (designed.neutral?.size ?? conductor.size) : null,
    grounding: { size: grounding.size, material },
    supplySide: false,
  };
}
