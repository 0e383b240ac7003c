import type { Edition } from "../basis/edition.js";
import { Decimal, decimal, type Numeric, print } from "../quantity.js";
import { readCell } from "../tables/code-table.js";
import { RANGE_DEMAND } from "../tables/range-demand.js";
import { type Cell, type Worked, worked } from "../worked.js";
import { citeKnown, unseen2026 } from "./known-rule.js";

export const COOKING_DEMAND = unseen2026({ "2017": "Table 220.55", "2020": "Table 220.55", "2023": "Table 220.55", "2026": "Table 120.55" }, "published");

export interface CookingAppliance {
  readonly is: "range" | "cooktop" | "oven";
  readonly kW: Numeric;
}

interface Demand {
  readonly value: Decimal;
  readonly expression: string;
  readonly cells: readonly Cell[];
}

/** Column C for one range, 8 kW to 12 kW of rating, with 5 % for each kW or major fraction above (Note 1); A or B (80 %) where less (Note 3). */
function oneRangeDemand(kW: Decimal, edition: Edition): Demand {
  const nameplate = `${print(kW.times(1000))} VA`;
  if (kW.gt(27) || kW.lte("1.75")) return { value: kW.times(1000), expression: nameplate, cells: [] };
  // Column A is for under 3.5 kW, column B to 8.75 kW; both are less than column C for one.
  if (kW.lte("8.75")) {
    const share = readCell(RANGE_DEMAND, "1", kW.lt("3.5") ? "A" : "B", edition)!;
    return { value: kW.times(10).times(share.value), expression: `${nameplate} × ${share.value} %`, cells: [share] };
  }
  const column = readCell(RANGE_DEMAND, "1", "C", edition)!;
  const whole = decimal(column.value).times(1000);
  if (kW.lte(12)) return { value: whole, expression: `${print(whole)} VA`, cells: [column] };
  const steps = kW.minus(12).toDecimalPlaces(0, Decimal.ROUND_HALF_UP);
  return { value: whole.times(steps.times("0.05").plus(1)), expression: `${print(whole)} VA × (1 + 0.05 × ${print(steps)})`, cells: [column] };
}

/** Branch-circuit load in VA: one oven or cooktop at its nameplate, one range by the table, a cooktop with one or two ovens added up as one range (Note 4). */
export function cookingDemand(id: string, appliances: readonly CookingAppliance[], edition: Edition): Worked | null {
  const count = (is: CookingAppliance["is"]) => appliances.filter((a) => a.is === is).length;
  const total = appliances.reduce((sum, a) => sum.plus(a.kW), new Decimal(0));
  const oneUnit = appliances.length === 1 && count("range") === 0;
  const together = count("cooktop") === 1 && count("oven") >= 1 && count("oven") <= 2 && count("range") === 0;
  if (!oneUnit && !together && !(appliances.length === 1 && count("range") === 1)) return null;
  const found: Demand = oneUnit ? { value: total.times(1000), expression: `${print(total.times(1000))} VA`, cells: [] } : oneRangeDemand(total, edition);
  return worked({
    id,
    label: "Branch-circuit load of the cooking equipment",
    value: found.value.toFixed(),
    unit: "VA",
    expression: found.expression,
    cells: found.cells,
    citations: [citeKnown(COOKING_DEMAND, edition)],
    edition,
  });
}
