import { cite, citeOther } from "../basis/citation.js";
import { type Edition, everyEdition } from "../basis/edition.js";
import { decimal, type Numeric, print } from "../quantity.js";
import { readCell, rowUpTo } from "../tables/code-table.js";
import { PVC_EXPANSION } from "../tables/pvc-expansion.js";
import { type Worked, worked } from "../worked.js";

const RULE = {
  sections: { "2017": "352.44", "2020": "352.44", "2023": "352.44(A)", "2026": "352.44(A)" },
  standing: "one-source",
} as const;
const METAL_RULE = { sections: everyEdition("300.7(B)"), standing: "one-source" } as const;

/** Inch per inch and °F. PVC: head of Table 352.44. Steel: the note to 300.7(B). */
const COEFFICIENT = { PVC: "0.0000338", steel: "0.0000065" } as const;
/** A fitting is wanted where a straight run between fixed points moves this much or more. */
const TRIGGER_IN = "0.25";

/** Yearly span of a raceway's temperature, °F. In direct sun makers of PVC conduit add 30 °F to the air; the code's own text does not. */
export function yearlySpan(given: { readonly id: string; readonly lowF: number; readonly highF: number; readonly inSun: boolean }): Worked {
  const sun = given.inSun ? 30 : 0;
  return worked({
    id: given.id,
    label: "Yearly change of temperature, °F",
    value: decimal(given.highF).minus(given.lowF).plus(sun).toFixed(),
    unit: "degrees",
    expression: `${print(given.highF)} - ${given.lowF < 0 ? `(${print(given.lowF)})` : print(given.lowF)}${sun > 0 ? ` + ${sun} (sun)` : ""}`,
    citations: [citeOther("Conduit makers' practice", "30 °F for direct sun", "one-source")].filter(() => sun > 0),
  });
}

export interface Expansion {
  readonly change: Worked;
  /** Table 352.44 at the next 5 °F up, for the same length; null for steel and beyond 200 °F. */
  readonly byTable: Worked | null;
  readonly fittingNeeded: boolean;
}

/** Change in length of a straight run between fixed points, in, and whether it calls for an expansion fitting. 352.44. */
export function expansion(given: {
  readonly id: string;
  readonly material: keyof typeof COEFFICIENT;
  readonly feet: Numeric;
  readonly spanF: Numeric;
  readonly edition: Edition;
}): Expansion {
  const { material, edition } = given;
  const inches = decimal(given.feet).times(12).times(given.spanF).times(COEFFICIENT[material]);
  const change = worked({
    id: given.id,
    label: `Change in length over ${print(given.spanF)} °F`,
    value: inches.toFixed(),
    unit: "in",
    expression: `${print(given.feet)} ft × 12 × ${print(given.spanF)} × ${COEFFICIENT[material]}`,
    citations: [cite(material === "PVC" ? RULE : METAL_RULE, edition)!],
    edition,
  });
  return { change, byTable: material === "PVC" ? tableChange(given) : null, fittingNeeded: inches.gte(TRIGGER_IN) };
}

function tableChange(given: { readonly id: string; readonly feet: Numeric; readonly spanF: Numeric; readonly edition: Edition }): Worked | null {
  const row = rowUpTo(PVC_EXPANSION, decimal(given.spanF).toNumber());
  const cell = row === null ? null : readCell(PVC_EXPANSION, row, "per100ft", given.edition);
  if (cell === null) return null;
  return worked({
    id: `${given.id}.table`,
    label: `Change in length by the table at ${cell.row} °F`,
    value: decimal(given.feet).times(cell.value).div(100).toFixed(),
    unit: "in",
    expression: `${print(given.feet)} ft / 100 × ${cell.value} in`,
    cells: [cell],
    edition: given.edition,
  });
}

/** How many fittings of a given travel take up a change; 0 below the 1/4 in that calls for one. The travel is the fitting maker's figure. */
export function fittingsNeeded(given: { readonly id: string; readonly expansion: Expansion; readonly travelIn: Numeric }): Worked {
  const { change, fittingNeeded } = given.expansion;
  if (decimal(given.travelIn).lte(0)) throw new RangeError("a fitting's travel is more than nothing");
  return worked({
    id: given.id,
    label: "Expansion fittings",
    value: fittingNeeded ? decimal(change.value).div(given.travelIn).ceil().toFixed() : "0",
    unit: "count",
    expression: fittingNeeded
      ? `${print(change.value, 3)} in / ${print(given.travelIn)} in, rounded up`
      : `${print(change.value, 3)} in is under ${TRIGGER_IN} in`,
    inputs: [change.id],
    citations: change.citations,
    edition: change.edition,
  });
}
