import type { Assumption } from "../designed.js";
import type { Segment } from "../job/schema.js";

/** The inside of every outdoor or buried raceway is a wet location. 300.5(B), 300.9. */
export function isWet(segment: Segment): boolean {
  return segment.place === "outdoors" || segment.place === "buried";
}

const USUAL_AMBIENT_C = { indoors: 30, outdoors: 40, buried: 30, attic: 55 } as const;

/** The ambient temperature of a segment in °C, with the assumption made where the job gives none (common practice, no source). */
export function ambientOf(segment: Segment, path: string): { readonly celsius: number; readonly assumption: Assumption | null } {
  if (segment.ambient !== undefined) return { celsius: segment.ambient, assumption: null };
  const celsius = USUAL_AMBIENT_C[segment.place];
  return {
    celsius,
    assumption: { path: `${path}.ambient`, says: `${segment.name}: air of ${celsius} °C taken for "${segment.place}" (common practice, no source)` },
  };
}
