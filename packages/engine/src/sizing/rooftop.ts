import { cite, type Rule } from "../basis/citation.js";
import type { Edition, PerEdition } from "../basis/edition.js";
import { decimal, type Numeric, print } from "../quantity.js";
import { type Worked, worked } from "../worked.js";

const ROOFTOP: Rule = {
  sections: { "2017": "310.15(B)(3)(c)", "2020": "310.15(B)(2)", "2023": "310.15(B)(2)", "2026": "310.15(B)(2)" },
  standing: "one-source",
};
/**
 * Closer to the roof than this the sun adds 33 °C. 2017 and 2020: electricallicenserenewal.com sections 277 and 879 (2017 also
 * electricalcodeacademy.net); 2023: the same publisher, section 1315; 2026 taken as 2023, from memory.
 */
const NEARER_IN: PerEdition<string> = { "2017": "0.875", "2020": "0.875", "2023": "0.75", "2026": "0.75" };
const ADDED_C = 33;

/** Air taken around conductors in the sun over a roof, °C; null where nothing is added: high enough, or XHHW-2, which the rule leaves out. */
export function rooftopAmbient(given: {
  readonly id: string;
  readonly ambientC: Numeric;
  readonly heightIn: Numeric;
  readonly insulation: string;
  readonly edition: Edition;
}): Worked | null {
  const { ambientC, edition } = given;
  if (given.insulation === "XHHW-2" || decimal(given.heightIn).gte(NEARER_IN[edition])) return null;
  return worked({
    id: given.id,
    label: `Air over the roof, under ${NEARER_IN[edition]} in above it in the sun`,
    value: decimal(ambientC).plus(ADDED_C).toFixed(),
    unit: "degC",
    expression: `${print(ambientC)} + ${ADDED_C}`,
    citations: [cite(ROOFTOP, edition)!],
    edition,
  });
}
