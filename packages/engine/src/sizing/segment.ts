import type { Basis } from "../basis/basis.js";
import type { Edition } from "../basis/edition.js";
import type { Assumption, DesignedSegment } from "../designed.js";
import type { EquipmentNeeds } from "../equipment/equipment.js";
import type { Segment } from "../job/schema.js";
import { CABLE_GROUNDING, isCable } from "../tables/cable.js";
import type { Size } from "../tables/size.js";
import type { Worked } from "../worked.js";
import { type Ampacity, type AmpacityGiven, ampacity } from "./ampacity.js";
import { leastCover } from "./burial.js";
import { type ConductorDemand, leastSize } from "./conductor.js";
import { groundingConductor } from "./grounding.js";
import { parallelAmpacity, parallelGrounding } from "./parallel.js";
import { leastParallelConductor } from "./parallel-conductor.js";
import { ambientOf, isWet } from "./place.js";
import { segmentFastening, segmentFill } from "./segment-raceway.js";

export interface SegmentGiven {
  readonly id: string;
  readonly path: string;
  readonly segment: Segment;
  readonly needs: Pick<EquipmentNeeds, "hots" | "neutral">;
  readonly rating: number;
  readonly demand: ConductorDemand;
  readonly terminalC: 60 | 75;
  /** A 120 V branch circuit of 20 A or less behind a GFCI breaker, which may lie less deep. */
  readonly small120V?: boolean;
  readonly basis: Basis;
}

/** The conditions of a segment that decide its conductor, all but the size. */
export function conditionsOf(given: SegmentGiven): Omit<AmpacityGiven, "size"> {
  const { segment } = given;
  const cable = isCable(segment.method);
  return {
    id: given.id,
    material: cable ? "copper" : segment.conductors.material,
    insulation: isCable(segment.method) ? segment.method : segment.conductors.insulation,
    ambientC: ambientOf({ ...given, edition: given.basis.edition }).celsius,
    // The neutral of a 120/240 V circuit carries only the unbalance and is not counted, 310.15(E); that of a 120 V circuit is.
    // Harmonics of electronic loads flow in it whole: then it is counted too.
    currentCarrying: 2 + (given.needs.hots === 2 && given.needs.neutral && segment.neutral_nonlinear ? 1 : 0) + (segment.others?.current_carrying ?? 0),
    terminalC: given.terminalC,
    wet: isWet(segment),
    edition: given.basis.edition,
  };
}

const setsOf = (segment: Segment) => segment.sets ?? 1;

/** Least lawful size of a segment by itself; null when no size in the tables serves. */
export function requiredSize(given: SegmentGiven): Size | null {
  const sets = setsOf(given.segment);
  return sets > 1 ? leastParallelConductor(conditionsOf(given), given.demand, sets) : leastSize(conditionsOf(given), given.demand);
}

/** Works one segment with a size settled: ampacity, grounding, fill, bends and cover, each as a worked value in order. */
export function designSegment(
  given: SegmentGiven,
  least: Size | null,
  size: Size,
  chosen: "given" | "computed",
): { readonly designed: DesignedSegment; readonly assumptions: readonly Assumption[] } {
  const { id, segment, needs, basis } = given;
  const edition = basis.edition;
  const conditions = conditionsOf(given);
  const found = ampacity({ ...conditions, size });
  const cable = isCable(segment.method);
  const sets = setsOf(segment);
  const grounding = groundingOf({
    sets,
    id: `${id}.grounding`,
    overcurrent: given.rating,
    material: conditions.material,
    leastSize: least ?? size,
    usedSize: size,
    edition,
  });
  const cableGround = cable ? (CABLE_GROUNDING[size] ?? null) : null;
  const groundingUse = cableGround
    ? { size: cableGround, chosen: "cable" as const }
    : segment.conductors.grounding
      ? { size: segment.conductors.grounding, chosen: "given" as const }
      : { size: grounding.size, chosen: "computed" as const };
  const count = needs.hots + (needs.neutral ? 1 : 0);
  const own = needs.neutral ? segment.conductors.neutral : undefined;
  const neutral = own === undefined ? null : { size: own, found: ampacity({ ...conditions, id: `${id}.neutral`, size: own }) };
  const fill = segmentFill({ id, segment, size, ground: groundingUse.size, count, ...(own === undefined ? {} : { neutral: own }), edition });
  const fastening = segmentFastening(id, segment, fill?.tradeSize ?? null, edition);
  const air = ambientOf({ ...given, edition });
  const steps: Worked[] = [];
  if (air.rooftop) steps.push(air.rooftop);
  if (found) steps.push(found.corrected, found.terminal, found.allowed);
  const together = found === null ? null : setsTogether(id, found, size, sets, edition);
  if (together && sets > 1) steps.push(together.terminal, together.allowed);
  if (neutral?.found) steps.push(neutral.found.corrected, neutral.found.terminal, neutral.found.allowed);
  steps.push(grounding.worked);
  if (fill) steps.push(fill.area, fill.limit, fill.percent);
  const cover =
    segment.place === "buried"
      ? leastCover({ id: `${id}.cover`, method: segment.method, place: segment.over, small120V: given.small120V ?? false, basis })
      : null;
  if (cover) steps.push(cover);
  steps.push(...fasteningSteps(fastening));
  return {
    designed: {
      segment,
      wet: isWet(segment),
      conductor: { size, count, chosen },
      grounding: groundingUse,
      neutral: neutral && { size: neutral.size, ampacity: neutral.found?.allowed ?? null },
      requiredSize: least,
      requiredGrounding: grounding.size,
      requiredGroundingCmil: grounding.leastCmil,
      terminal: together?.terminal ?? null,
      leastCover: cover,
      ampacity: together?.allowed ?? null,
      sets,
      tradeSize: fill?.tradeSize ?? null,
      fill: fill ? { area: fill.area, limit: fill.limit, percent: fill.percent, smallest: fill.smallest, better: fill.better } : null,
      bendTotal: segment.bends.reduce((sum, bend) => sum + bend, 0),
      ...fastening,
      steps,
    },
    assumptions: air.assumption ? [air.assumption] : [],
  };
}

function groundingOf({ sets, ...given }: Parameters<typeof groundingConductor>[0] & { readonly sets: number }) {
  return sets > 1 ? parallelGrounding({ ...given, raceways: sets }) : groundingConductor(given);
}

/** The terminals and the ampacity of all sets; null where sets may not be in parallel. One set is itself. */
function setsTogether(id: string, each: Ampacity, size: Size, sets: number, edition: Edition): Pick<Ampacity, "terminal" | "allowed"> | null {
  if (sets === 1) return each;
  const allowed = parallelAmpacity({ id: `${id}.sets`, each: each.allowed, size, sets, edition });
  const terminal = parallelAmpacity({ id: `${id}.sets-terminal`, each: each.terminal, size, sets, edition });
  if (allowed === null || terminal === null) return null;
  return { allowed, terminal: { ...terminal, label: `${terminal.label} at the terminals` } };
}

function fasteningSteps({ supports, expansion }: Pick<DesignedSegment, "supports" | "expansion">): Worked[] {
  return [
    ...(supports ? [supports.within, supports.apart, supports.count] : []),
    ...(expansion ? [...(expansion.span ? [expansion.span] : []), expansion.change, ...(expansion.needed ? [expansion.fittings] : [])] : []),
  ];
}
