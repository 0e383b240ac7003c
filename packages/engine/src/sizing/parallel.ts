import { cite } from "../basis/citation.js";
import type { Edition } from "../basis/edition.js";
import { decimal, type Numeric, print } from "../quantity.js";
import { compareSizes, printSize, type Size } from "../tables/size.js";
import { type Worked, worked } from "../worked.js";
import type { Material } from "./ampacity.js";
import { type GroundingSize, groundingConductor } from "./grounding.js";

const PARALLEL = { sections: { "2017": "310.10(H)", "2020": "310.10(G)", "2023": "310.10(G)", "2026": "310.10(G)" }, standing: "published" } as const;
const FULL_SIZE = { sections: { "2017": "250.122(F)", "2020": "250.122(F)", "2023": "250.122(F)", "2026": "250.122(F)" }, standing: "published" } as const;
/** Least size that may be joined in parallel. 310.10(G)(1). */
export const LEAST_PARALLEL: Size = "1/0";

/** What must be the same in every conductor of one phase or of the neutral. 310.10(G)(2). */
export interface ParallelConductor {
  readonly feet: Numeric;
  readonly material: Material;
  readonly size: Size;
  readonly insulation: string;
  readonly termination: string;
}
export type ParallelFault = "too-small" | keyof ParallelConductor;

/** Why these conductors may not share a current; empty when they may. One conductor alone is not parallel. */
export function parallelFaults(conductors: readonly ParallelConductor[]): readonly ParallelFault[] {
  const [first, ...rest] = conductors;
  if (first === undefined || rest.length === 0) return [];
  const differ = (["material", "size", "insulation", "termination"] as const).filter((key) => rest.some((other) => other[key] !== first[key]));
  const length: ParallelFault[] = rest.some((other) => !decimal(other.feet).eq(first.feet)) ? ["feet"] : [];
  const small: ParallelFault[] = conductors.some(({ size }) => compareSizes(size, LEAST_PARALLEL) < 0) ? ["too-small"] : [];
  return [...small, ...length, ...differ];
}

/**
 * Ampacity of equal sets in parallel, in amperes: that of one conductor (already corrected, adjusted and held to its terminals)
 * times the sets. Null for two sets or more smaller than 1/0 AWG. 310.10(G) (310.10(H) in 2017).
 */
export function parallelAmpacity(given: {
  readonly id: string;
  readonly each: Worked;
  readonly size: Size;
  readonly sets: number;
  readonly edition: Edition;
}): Worked | null {
  const { each, size, sets, edition } = given;
  if (!Number.isInteger(sets) || sets < 1) throw new RangeError(`not a count of sets: ${sets}`);
  if (sets > 1 && compareSizes(size, LEAST_PARALLEL) < 0) return null;
  return worked({
    id: given.id,
    label: `${sets} ${sets === 1 ? "set" : "sets in parallel"} of ${printSize(size)}, ampacity`,
    value: decimal(each.value).times(sets).toFixed(),
    unit: "A",
    expression: `${print(each.value)} A × ${sets}`,
    inputs: [each.id],
    citations: sets > 1 ? [cite(PARALLEL, edition)!] : [],
    edition,
  });
}

/**
 * Equipment grounding conductor of parallel sets: the whole size for the overcurrent device (A) in each raceway, never a share of it,
 * raised in proportion when the ungrounded conductors are. 250.122(F), (B). `count` is one a raceway. Throws as groundingConductor.
 */
export function parallelGrounding(given: Parameters<typeof groundingConductor>[0] & { readonly raceways: number }): GroundingSize & { readonly count: number } {
  const found = groundingConductor(given);
  const citation = cite(FULL_SIZE, given.edition)!;
  const label = given.raceways > 1 ? `${found.worked.label}, whole size in each of ${given.raceways} raceways` : found.worked.label;
  return { ...found, count: given.raceways, worked: { ...found.worked, label, citations: [...found.worked.citations, citation] } };
}
