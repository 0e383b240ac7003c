import { decimal, type Numeric } from "../quantity.js";
import { readCell } from "../tables/code-table.js";
import { SIZES, type Size } from "../tables/size.js";
import { SMALL_CONDUCTOR } from "../tables/small-conductor.js";
import { type Ampacity, type AmpacityGiven, ampacity } from "./ampacity.js";
import { standardRatingAtLeast } from "./overcurrent.js";

export interface ConductorDemand {
  /** Load current in amperes, without the 125 %. */
  readonly load: Numeric;
  /** Load with 125 % of its continuous part, tested at the terminals before any correction. 210.19(A). */
  readonly terminalLoad: Numeric;
  readonly overcurrent: number;
}

/** Which of the four tests a size does not meet; empty when it serves. Least size: 14 AWG copper, 12 AWG aluminum, 310.3(A). */
export type Shortfall = "no-ampacity" | "terminals" | "load" | "protection" | "small-conductor";

/** Tests one size: terminals (110.14(C)), corrected ampacity against load (210.19), protection (240.4(B)), small conductors (240.4(D)). */
export function shortfalls(given: AmpacityGiven, demand: ConductorDemand): { readonly short: readonly Shortfall[]; readonly ampacity: Ampacity | null } {
  const found = ampacity(given);
  if (found === null) return { short: ["no-ampacity"], ampacity: null };
  const short: Shortfall[] = [];
  const allowed = decimal(found.allowed.value);
  if (decimal(found.terminal.value).lt(demand.terminalLoad)) short.push("terminals");
  if (allowed.lt(demand.load)) short.push("load");
  const next = standardRatingAtLeast(allowed, given.edition);
  if (next !== null && next < demand.overcurrent) short.push("protection");
  const small = readCell(SMALL_CONDUCTOR, given.size, given.material, given.edition);
  if (small !== null && decimal(small.value).lt(demand.overcurrent)) short.push("small-conductor");
  return { short, ampacity: found };
}

/** The smallest size from 14 AWG up that meets every test, or null when none does. */
export function leastConductor(given: Omit<AmpacityGiven, "size">, demand: ConductorDemand): { readonly size: Size; readonly ampacity: Ampacity } | null {
  for (const size of SIZES.slice(SIZES.indexOf("14"))) {
    const { short, ampacity: found } = shortfalls({ ...given, size }, demand);
    if (short.length === 0 && found) return { size, ampacity: found };
  }
  return null;
}
