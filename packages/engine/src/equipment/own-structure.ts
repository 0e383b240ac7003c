import { everyEdition } from "../basis/edition.js";
import type { Circuit } from "../job/schema.js";

/** What asks a disconnect where a circuit or feeder comes to another building or structure. */
export const STRUCTURE_DISCONNECT = { sections: everyEdition("225.31, 225.32"), standing: "one-source" } as const;

const STRUCTURES = {
  post: { says: "a post of its own", noun: "post" },
  "other-building": { says: "another building", noun: "other building" },
} as const;

/** What an outlet stands on besides the building of its panel, in words; null where it is told to stand there, or nothing is told. */
export function ownStructure({ stands_on: on }: Pick<Circuit, "stands_on">): (typeof STRUCTURES)[keyof typeof STRUCTURES] | null {
  return on === undefined || on === "same-building" ? null : STRUCTURES[on];
}
