import { leavesOf, type Place, type PlacedGroup } from "./placed.js";

/** One field of a flattened overlay and where it came from. */
export interface ExplainedField extends Place {
  readonly path: string;
  readonly value: unknown;
}

const NOT_OF_THE_RESULT = ["changes", "extends"];

/** Every field of the flattened overlay, with the file and line it was written on. */
export function explainOverlay(placed: PlacedGroup): readonly ExplainedField[] {
  return leavesOf(placed).filter(({ path }) => !NOT_OF_THE_RESULT.includes(path.split(".")[0] ?? ""));
}
