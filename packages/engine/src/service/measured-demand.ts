import { cite } from "../basis/citation.js";
import { article220, type Edition } from "../basis/edition.js";
import { decimal, print } from "../quantity.js";
import { type Worked, worked } from "../worked.js";

/** Existing demand from a measured peak: 125 % of it, in VA. 220.87 (120.87 in 2026). */
export function measuredDemand(given: { readonly id: string; readonly peakVA: number; readonly edition: Edition }): Worked {
  return worked({
    id: given.id,
    label: "Existing demand, 125 % of the measured peak",
    value: decimal(given.peakVA).times("1.25").toFixed(),
    unit: "VA",
    expression: `${print(given.peakVA)} VA × 1.25`,
    citations: [cite({ sections: article220("87"), standing: "published" }, given.edition)!],
    edition: given.edition,
  });
}
