import { SIZES, type Size } from "../tables/size.js";
import { type AmpacityGiven, ampacityAmperes, ampacityCells } from "./ampacity.js";
import { type ConductorDemand, ORDINARY, OVER } from "./conductor.js";
import { LEAST_PARALLEL } from "./parallel.js";

/** The smallest size, 1/0 AWG up, of which so many equal sets together meet terminals, load and protection; null when none does. 310.10(G), 240.4(B). */
export function leastParallelConductor(given: Omit<AmpacityGiven, "size">, demand: ConductorDemand, sets: number): Size | null {
  const { limit } = demand.protection ?? ORDINARY;
  const cellsOf = ampacityCells(given);
  for (const size of SIZES.slice(SIZES.indexOf(LEAST_PARALLEL))) {
    const cells = cellsOf(size);
    if (cells === null) continue;
    const one = ampacityAmperes(cells);
    const allowed = one.allowed.times(sets);
    const carries = allowed.gte(demand.load) && one.terminal.times(sets).gte(demand.terminalLoad);
    if (carries && !OVER[limit](allowed, demand.overcurrent, given.edition)) return size;
  }
  return null;
}
