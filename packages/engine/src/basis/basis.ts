import type { Edition } from "./edition.js";

/** What the adopted code says here: an edition and the check ids that an overlay turned off, with its reason. */
export interface Basis {
  readonly edition: Edition;
  readonly waivedChecks: Readonly<Record<string, { readonly reason: string; readonly citation: string }>>;
  /** Least cover in inches set by the jurisdiction for a location row of the cover table; larger than the code's. */
  readonly leastCover: Readonly<Record<string, { readonly inches: number; readonly replaces: number; readonly citation: string }>>;
}

/** The unamended code of one edition. */
export function unamended(edition: Edition): Basis {
  return { edition, waivedChecks: {}, leastCover: {} };
}
