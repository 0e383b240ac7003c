import { citeOther } from "../basis/citation.js";
import type { Edition } from "../basis/edition.js";
import type { Worked } from "../worked.js";
import type { OvercurrentBound } from "./overcurrent-bound.js";
import type { Applies, Required, Statement } from "./statement.js";

/** What one piece of equipment asks of its circuit. Amperes throughout; ratings are standard ones, 240.6(A). */
export interface EquipmentCircuit {
  readonly id: string;
  readonly edition: Edition;
  readonly says: string;
  readonly volts: 120 | 240;
  readonly poles: 1 | 2;
  readonly hots: 1 | 2;
  readonly neutral: boolean;
  /** Minimum circuit ampacity, before any correction or adjustment. */
  readonly ampacity: Worked;
  /** Null where the standard ratings known here (to 600 A) do not reach, or where the code sets no bound. */
  readonly overcurrent: { readonly least: OvercurrentBound | null; readonly most: OvercurrentBound | null };
  readonly smallConductorCap: Applies;
  readonly nextSizeUp: Applies;
  readonly disconnect: Required;
  readonly gfci: Required;
  readonly notes: readonly Statement[];
  readonly steps: readonly Worked[];
}

/** Completes a circuit: gathers its steps and says so when the least device is larger than the most allowed. */
export function equipmentCircuit(
  parts: Omit<EquipmentCircuit, "hots" | "steps" | "notes"> & {
    readonly before?: readonly Worked[];
    readonly after?: readonly Worked[];
    readonly notes?: readonly Statement[];
  },
): EquipmentCircuit {
  const { before = [], after = [], notes = [], ...rest } = parts;
  const { least, most } = rest.overcurrent;
  const clash: readonly Statement[] =
    least !== null && most !== null && least.rating > most.rating
      ? [
          {
            says: `the load asks ${least.rating} A at the least, but ${most.rating} A is the most allowed: check the nameplate and the outlet`,
            citation: citeOther("Comparison", "least and most overcurrent rating", "practice"),
          },
        ]
      : [];
  return {
    ...rest,
    hots: rest.poles,
    notes: [...clash, ...notes],
    steps: [...before, rest.ampacity, ...(least ? [least.worked] : []), ...(most && most !== least ? [most.worked] : []), ...after],
  };
}
