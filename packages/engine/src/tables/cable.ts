import { compareSizes, type Size } from "./size.js";

export type Cable = "NM-B" | "UF-B";

/** Whether a wiring method or an insulation is one of the nonmetallic cables. */
export const isCable = <M extends string>(method: M): method is M & Cable => method === "NM-B" || method === "UF-B";

/** Equipment grounding conductor that comes in NM-B and UF-B copper cable, by conductor size. From memory of makers' lists. */
export const CABLE_GROUNDING: Readonly<Partial<Record<Size, Size>>> = {
  "14": "14",
  "12": "12",
  "10": "10",
  "8": "10",
  "6": "10",
  "4": "8",
  "3": "8",
  "2": "8",
};

/** Largest copper conductor of each cable that this engine knows: NM-B by 334.104, from memory; UF-B as far as the list above goes. */
const LARGEST_IN_CABLE: Readonly<Record<Cable, Size>> = { "NM-B": "2", "UF-B": "2" };

/** The size, or the largest the cable comes in. */
export function withinCable(method: string, size: Size): Size {
  const largest = isCable(method) ? LARGEST_IN_CABLE[method] : size;
  return compareSizes(size, largest) > 0 ? largest : size;
}
