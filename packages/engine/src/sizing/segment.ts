import type { Basis } from "../basis/basis.js";
import type { Assumption, DesignedSegment } from "../designed.js";
import type { Segment } from "../job/schema.js";
import type { OutletNeeds } from "../outlet.js";
import { CABLE_GROUNDING, isCable } from "../tables/cable.js";
import { compareSizes, type Size } from "../tables/size.js";
import type { Worked } from "../worked.js";
import { type AmpacityGiven, ampacity } from "./ampacity.js";
import { leastCover } from "./burial.js";
import { type ConductorDemand, leastConductor } from "./conductor.js";
import { groundingConductor } from "./grounding.js";
import { ambientOf, isWet } from "./place.js";
import { conductorArea, fillLimit, fillPercent, leastRaceway } from "./raceway-fill.js";

export interface SegmentGiven {
  readonly id: string;
  readonly path: string;
  readonly segment: Segment;
  readonly needs: Pick<OutletNeeds, "hots" | "neutral">;
  readonly rating: number;
  readonly demand: ConductorDemand;
  readonly terminalC: 60 | 75;
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
    ambientC: ambientOf(segment, given.path).celsius,
    // The neutral of a 120/240 V circuit carries only the unbalance and is not counted, 310.15(E); that of a 120 V circuit is.
    currentCarrying: 2 + (segment.others?.current_carrying ?? 0),
    terminalC: given.terminalC,
    edition: given.basis.edition,
  };
}

/** Least lawful size of a segment by itself; null when no size in the tables serves. */
export function requiredSize(given: SegmentGiven): Size | null {
  return leastConductor(conditionsOf(given), given.demand)?.size ?? null;
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
  const grounding = groundingConductor({
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
  const fill = cable ? null : raceway(given, size, groundingUse.size, count);
  const steps: Worked[] = [];
  if (found) steps.push(found.corrected, found.terminal, found.allowed);
  steps.push(grounding.worked);
  if (fill) steps.push(fill.area, fill.limit, fill.percent);
  const cover = segment.place === "buried" ? leastCover({ id: `${id}.cover`, method: segment.method, place: segment.over, basis }) : null;
  if (cover) steps.push(cover);
  const assumption = ambientOf(segment, given.path).assumption;
  return {
    designed: {
      segment,
      wet: isWet(segment),
      conductor: { size, count, chosen },
      grounding: groundingUse,
      requiredSize: least,
      requiredGrounding: grounding.size,
      requiredGroundingCmil: grounding.leastCmil,
      terminal: found?.terminal ?? null,
      leastCover: cover,
      ampacity: found?.allowed ?? null,
      tradeSize: fill?.tradeSize ?? null,
      fill: fill ? { area: fill.area, limit: fill.limit, percent: fill.percent, smallest: fill.smallest } : null,
      bendTotal: segment.bends.reduce((sum, bend) => sum + bend, 0),
      steps,
    },
    assumptions: assumption ? [assumption] : [],
  };
}

function raceway(given: SegmentGiven, size: Size, ground: Size, count: number) {
  const { segment, id, basis } = given;
  const { insulation } = segment.conductors;
  const total = count + 1 + (segment.others?.current_carrying ?? 0);
  const area = conductorArea({
    id: `${id}.area`,
    conductors:
      compareSizes(size, ground) === 0
        ? [{ size, insulation, count: count + 1 }]
        : [
            { size, insulation, count },
            { size: ground, insulation, count: 1 },
          ],
    othersIn2: segment.others?.area_in2 ?? 0,
    edition: basis.edition,
  });
  if (area === null) return null;
  const smallest = leastRaceway({ raceway: segment.method, areaIn2: area.value, count: total, edition: basis.edition });
  const tradeSize = segment.trade_size ?? smallest;
  if (tradeSize === null) return null;
  const limit = fillLimit({ id: `${id}.limit`, raceway: segment.method, tradeSize, count: total, edition: basis.edition });
  const percent = fillPercent({ id: `${id}.fill`, area, raceway: segment.method, tradeSize, edition: basis.edition });
  return limit && percent ? { area, limit, percent, smallest, tradeSize } : null;
}
