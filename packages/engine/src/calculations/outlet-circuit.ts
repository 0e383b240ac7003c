import type { Edition } from "../basis/edition.js";
import { type HouseCircuit, houseCircuit, runOhms } from "../readings/house-circuit.js";

/** The circuit of an outlet from its run, the supply and the rest of the house as assumed. */
export function outletCircuit(given: {
  readonly outlet: HouseCircuit["outlet"];
  readonly stretches: Parameters<typeof runOhms>[0];
  readonly edition: Edition;
}): HouseCircuit {
  const feet = given.stretches.reduce((sum, stretch) => sum + stretch.feet, 0);
  return houseCircuit({ outlet: given.outlet, run: runOhms(given.stretches, given.edition), feet });
}
