import type { Edition } from "../basis/edition.js";
import type { Assumption } from "../designed.js";
import type { Segment } from "../job/schema.js";
import { isCable } from "../tables/cable.js";
import type { Worked } from "../worked.js";
import { rooftopAmbient } from "./rooftop.js";

/** The inside of every outdoor or buried raceway is a wet location. 300.5(B), 300.9. */
export function isWet(segment: Segment): boolean {
  return segment.place === "outdoors" || segment.place === "buried";
}

const USUAL_AMBIENT_C = { indoors: 30, outdoors: 40, buried: 30, attic: 55 } as const;

export interface Ambient {
  readonly celsius: number;
  /** The line that adds the heat of a roof; null where none is added. */
  readonly rooftop: Worked | null;
  readonly assumption: Assumption | null;
}

/** The ambient temperature of a segment in °C, with the assumption made where the job gives none (common practice, no source). */
export function ambientOf(given: { readonly id: string; readonly segment: Segment; readonly path: string; readonly edition: Edition }): Ambient {
  const { segment, edition } = given;
  const air = segment.ambient ?? USUAL_AMBIENT_C[segment.place];
  const assumption =
    segment.ambient === undefined
      ? { path: `${given.path}.ambient`, says: `${segment.name}: air of ${air} °C taken for "${segment.place}" (common practice, no source)` }
      : null;
  const insulation = isCable(segment.method) ? segment.method : segment.conductors.insulation;
  const rooftop =
    segment.rooftop_height === undefined || !sunlit(segment)
      ? null
      : rooftopAmbient({ id: `${given.id}.rooftop`, ambientC: air, heightIn: segment.rooftop_height, insulation, edition });
  return { celsius: rooftop === null ? air : Number(rooftop.value), rooftop, assumption };
}

const sunlit = (segment: Segment) => segment.place === "outdoors";
