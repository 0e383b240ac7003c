import { type Citation, cite } from "../basis/citation.js";
import { type Edition, everyEdition } from "../basis/edition.js";
import { decimal, type Numeric, print } from "../quantity.js";
import { type Worked, worked } from "../worked.js";

const RODS = { sections: everyEdition("250.53(A)(2)"), standing: "memory" } as const;
const BUILDING = { sections: everyEdition("250.32(A), (B)"), standing: "one-source" } as const;
/** Resistance to earth at or under which one rod, pipe or plate serves alone, ohms. 250.53(A)(2) exception. */
export const LONE_ROD_OHMS = 25;

/**
 * Rods, pipes or plates needed: two, unless one alone is measured at 25 ohms to earth or less. The second ends the duty: its
 * resistance is not measured again. `measuredOhms` null means nobody measured.
 */
export function rodsNeeded(given: { readonly id: string; readonly measuredOhms: Numeric | null; readonly edition: Edition }): Worked {
  const { measuredOhms, edition } = given;
  const lone = measuredOhms !== null && decimal(measuredOhms).lte(LONE_ROD_OHMS);
  return worked({
    id: given.id,
    label: "Ground rods",
    value: lone ? "1" : "2",
    unit: "count",
    expression: `by one alone ${measuredOhms === null ? "not measured" : `measured at ${print(measuredOhms)} Ω`} (${LONE_ROD_OHMS} Ω or less serves alone)`,
    citations: [cite(RODS, edition)!],
    edition,
  });
}

export interface BuildingGrounding {
  readonly electrodes: boolean;
  /** The grounding conductor run with the supply: always, in new work. */
  readonly groundingWithSupply: true;
  /** Neutral to ground at the building: never, in new work. */
  readonly neutralBonded: false;
  readonly citation: Citation;
}

/**
 * Grounding at a second building or structure: an electrode system, save where one branch circuit (a multiwire one counts as one)
 * with its own equipment grounding conductor is all that supplies it; a grounding conductor with the supply; the neutral kept apart. 250.32.
 */
export function buildingGrounding(given: {
  readonly supply: "feeder" | "one-branch-circuit" | "several-branch-circuits";
  readonly edition: Edition;
}): BuildingGrounding {
  return {
    electrodes: given.supply !== "one-branch-circuit",
    groundingWithSupply: true,
    neutralBonded: false,
    citation: cite(BUILDING, given.edition)!,
  };
}
