import { cite } from "../basis/citation.js";
import { type Edition, everyEdition } from "../basis/edition.js";
import { decimal, print } from "../quantity.js";
import { AMPACITY } from "../tables/ampacity.js";
import { readCell } from "../tables/code-table.js";
import { compareSizes, printSize, SIZES, type Size } from "../tables/size.js";
import { type Worked, worked } from "../worked.js";
import type { Material } from "./ampacity.js";

const COUNTED = { sections: { "2017": "310.15(B)(5)", "2020": "310.15(E)", "2023": "310.15(E)", "2026": "310.15(E)" }, standing: "published" } as const;
const FEEDER_FLOOR = { sections: everyEdition("215.2(A)"), standing: "memory" } as const;
// From 2023 the clause on the grounded conductor brought to service equipment is lettered (D).
const SERVICE_FLOOR = { sections: { "2017": "250.24(C)", "2020": "250.24(C)", "2023": "250.24(D)", "2026": "250.24(D)" }, standing: "memory" } as const;

export interface NeutralCircuit {
  readonly hots: 1 | 2 | 3;
  readonly neutral: boolean;
  /** `split`: 120/240 V single phase. `wye`: any legs of a four-wire, three-phase wye such as 208Y/120. */
  readonly system: "split" | "wye";
  /** The greater part of the load is nonlinear (electronic supplies, discharge lighting). */
  readonly nonlinear: boolean;
}

/**
 * Whether a neutral counts among the current-carrying conductors. It does with one hot, with two hots of a wye, and with a mainly
 * nonlinear load; it does not where it carries only the unbalance. 310.15(E) (310.15(B)(5) in 2017). The code asks the nonlinear
 * count of a four-wire wye alone; here it is kept for a split-phase circuit too, which errs to the safe side.
 */
export function neutralCounts({ hots, neutral, system, nonlinear }: NeutralCircuit): boolean {
  return neutral && (hots === 1 || nonlinear || (system === "wye" && hots === 2));
}

/** Current-carrying conductors of all circuits in one raceway or cable: the count that adjusts ampacity. */
export function currentCarryingCount(given: { readonly id: string; readonly circuits: readonly NeutralCircuit[]; readonly edition: Edition }): Worked {
  const counts = given.circuits.map((circuit) => circuit.hots + (neutralCounts(circuit) ? 1 : 0));
  return worked({
    id: given.id,
    label: "Current-carrying conductors",
    value: String(counts.reduce((sum, count) => sum + count, 0)),
    unit: "count",
    expression: counts.join(" + ") || "0",
    citations: [cite(COUNTED, given.edition)!],
    edition: given.edition,
  });
}

export interface NeutralFloor {
  readonly kind: "feeder" | "service";
  /** Feeder: the equipment grounding conductor. Service: the grounded conductor of Table 250.102(C)(1). */
  readonly size: Size;
}

/**
 * Least neutral: carries its greatest unbalance (A, 220.61, already worked) by the 60 or 75 °C column, and is not smaller than the equipment grounding conductor (feeder) or the
 * least grounded conductor (service), for it carries the fault current there. Null when no size in the table serves.
 */
export function neutralSize(given: {
  readonly id: string;
  readonly load: Worked;
  readonly material: Material;
  readonly terminalC: 60 | 75;
  readonly floor: NeutralFloor;
  readonly edition: Edition;
}): { readonly size: Size; readonly governs: "load" | "floor"; readonly worked: Worked } | null {
  const { load, floor, edition } = given;
  const column = `${given.material === "copper" ? "cu" : "al"}${given.terminalC}` as const;
  const carries = SIZES.find((size) => decimal(load.value).lte(readCell(AMPACITY, size, column, edition)?.value ?? -1));
  if (carries === undefined) return null;
  const cell = readCell(AMPACITY, carries, column, edition)!;
  const governs = compareSizes(floor.size, carries) > 0 ? "floor" : "load";
  const size = governs === "floor" ? floor.size : carries;
  const why = floor.kind === "feeder" ? "equipment grounding conductor" : "least grounded conductor of the service";
  return {
    size,
    governs,
    worked: worked({
      id: given.id,
      label: "Neutral, least size",
      value: size,
      unit: "AWG/kcmil",
      expression: `${print(load.value)} A by ${printSize(carries)} at ${cell.value} A, not smaller than ${printSize(floor.size)} (${why})`,
      inputs: [load.id],
      cells: [cell],
      citations: [cite(floor.kind === "feeder" ? FEEDER_FLOOR : SERVICE_FLOOR, edition)!],
      edition,
    }),
  };
}
