import { type Decimal, decimal, type Numeric } from "../quantity.js";
import { readCell } from "../tables/code-table.js";
import { SIZES, type Size } from "../tables/size.js";
import { SMALL_CONDUCTOR } from "../tables/small-conductor.js";
import { type Ampacity, type AmpacityGiven, ampacity, ampacityAmperes, ampacityCells, nearAmperes } from "./ampacity.js";
import { standardRatingAtLeast } from "./overcurrent.js";

/** How the overcurrent device and the conductor's ampacity bind one another. */
export interface ConductorProtection {
  /** 14, 12 and 10 AWG keep their limits, 240.4(D); not behind motors, air conditioners and welders, 240.4(G). */
  readonly smallConductorCap: boolean;
  /**
   * The device at most the ampacity (several receptacles for portable loads), the next standard rating above it (240.4(B)), twice
   * the ampacity and then the next standard rating (a welder, 630.12(B)), or by its own article alone (a motor 430.52, an air conditioner 440.22).
   */
  readonly limit: "ampacity" | "next-size-up" | "twice" | "own-article";
}
export const ORDINARY: ConductorProtection = { smallConductorCap: true, limit: "next-size-up" };

export interface ConductorDemand {
  /** Current in amperes that the corrected ampacity must carry: the load, without the 125 % of what is continuous. */
  readonly load: Numeric;
  /** Load with 125 % of its continuous part, tested at the terminals before any correction. 210.19(A). */
  readonly terminalLoad: Numeric;
  readonly overcurrent: number;
  /** Ordinary protection when left out. */
  readonly protection?: ConductorProtection;
}

/** Which of the four tests a size does not meet; empty when it serves. Least size: 14 AWG copper, 12 AWG aluminum, 310.3(A). */
export type Shortfall = "no-ampacity" | "terminals" | "load" | "protection" | "small-conductor";

/** Whether a device is larger than the conductor's ampacity allows it to be. */
export const OVER: Readonly<Record<ConductorProtection["limit"], (allowed: Decimal, device: number, edition: AmpacityGiven["edition"]) => boolean>> = {
  ampacity: (allowed, device) => allowed.lt(device),
  "next-size-up": overNextSize,
  twice: (allowed, device, edition) => overNextSize(allowed.times(2), device, edition),
  "own-article": () => false,
};

function overNextSize(allowed: Decimal, device: number, edition: AmpacityGiven["edition"]): boolean {
  const next = standardRatingAtLeast(allowed, edition);
  return next !== null && next < device;
}

/** Tests one size: terminals (110.14(C)), corrected ampacity against load (210.19), protection (240.4(B)), small conductors (240.4(D)). */
export function shortfalls(given: AmpacityGiven, demand: ConductorDemand): { readonly short: readonly Shortfall[]; readonly ampacity: Ampacity | null } {
  const found = ampacity(given);
  if (found === null) return { short: ["no-ampacity"], ampacity: null };
  const amperes = { terminal: decimal(found.terminal.value), allowed: decimal(found.allowed.value) };
  return { short: shortOf(amperes, given, demand), ampacity: found };
}

function shortOf(
  { terminal, allowed }: { readonly terminal: Decimal; readonly allowed: Decimal },
  given: Pick<AmpacityGiven, "size" | "material" | "edition">,
  demand: ConductorDemand,
): readonly Shortfall[] {
  const { smallConductorCap, limit } = demand.protection ?? ORDINARY;
  const short: Shortfall[] = [];
  if (terminal.lt(demand.terminalLoad)) short.push("terminals");
  if (allowed.lt(demand.load)) short.push("load");
  if (OVER[limit](allowed, demand.overcurrent, given.edition)) short.push("protection");
  const small = smallConductorCap ? readCell(SMALL_CONDUCTOR, given.size, given.material, given.edition) : null;
  if (small !== null && decimal(small.value).lt(demand.overcurrent)) short.push("small-conductor");
  return short;
}

const OPEN_SIZES = SIZES.slice(SIZES.indexOf("14"));
/** Doubles this far apart, as a part of either, are told apart without decimals: their own error is under a thousandth of it. */
const PLAINLY = 1 - 1e-9;

/** The smallest size from 14 AWG up that meets every test by {@link shortfalls}, or null when none does. */
export function leastSize(given: Omit<AmpacityGiven, "size">, demand: ConductorDemand): Size | null {
  const load = Number(demand.load) * PLAINLY;
  const terminalLoad = Number(demand.terminalLoad) * PLAINLY;
  const { material, edition } = given;
  const cellsOf = ampacityCells(given);
  for (const size of OPEN_SIZES) {
    const cells = cellsOf(size);
    if (cells === null) continue;
    const near = nearAmperes(cells);
    if (near.terminal < terminalLoad || near.allowed < load) continue;
    if (shortOf(ampacityAmperes(cells), { size, material, edition }, demand).length === 0) return size;
  }
  return null;
}

/** As {@link leastSize}, with its ampacity. */
export function leastConductor(given: Omit<AmpacityGiven, "size">, demand: ConductorDemand): { readonly size: Size; readonly ampacity: Ampacity } | null {
  const size = leastSize(given, demand);
  const found = size && ampacity({ ...given, size });
  return size && found ? { size, ampacity: found } : null;
}
