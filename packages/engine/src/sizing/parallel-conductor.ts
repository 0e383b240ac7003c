import { decimal } from "../quantity.js";
import { SIZES, type Size } from "../tables/size.js";
import { type AmpacityGiven, ampacity } from "./ampacity.js";
import { type ConductorDemand, ORDINARY, OVER } from "./conductor.js";
import { LEAST_PARALLEL } from "./parallel.js";

/** The smallest size, 1/0 AWG up, of which so many equal sets together meet terminals, load and protection; null when none does. 310.10(G), 240.4(B). */
export function leastParallelConductor(given: Omit<AmpacityGiven, "size">, demand: ConductorDemand, sets: number): Size | null {
  const { limit } = demand.protection ?? ORDINARY;
  for (const size of SIZES.slice(SIZES.indexOf(LEAST_PARALLEL))) {
    const found = ampacity({ ...given, size });
    if (found === null) continue;
    const allowed = decimal(found.allowed.value).times(sets);
    const carries = allowed.gte(demand.load) && decimal(found.terminal.value).times(sets).gte(demand.terminalLoad);
    if (carries && !OVER[limit](allowed, demand.overcurrent, given.edition)) return size;
  }
  return null;
}
