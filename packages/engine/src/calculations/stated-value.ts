import { citeOther } from "../basis/citation.js";
import type { Numeric, Unit } from "../quantity.js";
import { decimal, print } from "../quantity.js";
import { type Worked, worked } from "../worked.js";

const UNIT_WORDS: Readonly<Partial<Record<Unit, string>>> = { in2: "in²", in3: "in³" };

/** A figure the caller states, as the first line of a chain of worked values. */
export function statedValue(id: string, label: string, value: Numeric, unit: Unit): Worked {
  return worked({
    id,
    label,
    value: decimal(value).toFixed(),
    unit,
    expression: `${print(value, 6)} ${UNIT_WORDS[unit] ?? unit}`,
    citations: [citeOther("Given", "as stated by the caller", "practice")],
  });
}
