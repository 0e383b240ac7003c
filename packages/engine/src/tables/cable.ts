import type { Size } from "./size.js";

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
