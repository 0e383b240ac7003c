import { article220, type Edition } from "../basis/edition.js";
import { Decimal, decimal, print } from "../quantity.js";
import { rowFrom } from "../tables/code-table.js";
import { RANGE_DEMAND } from "../tables/range-demand.js";
import type { Worked } from "../worked.js";
import { loadCell, loadLine, loadRule } from "./load-line.js";

const RULE = loadRule(article220("55"), "published");
const COLUMN_C_RATING = 12000;

/** Column A or B: the nameplates by the percentage for their number; no line for none. */
export function percentColumn(id: string, column: "A" | "B", nameplates: readonly number[], edition: Edition): readonly Worked[] {
  if (nameplates.length === 0) return [];
  const cell = loadCell(RANGE_DEMAND, rowFrom(RANGE_DEMAND, nameplates.length)!, column, edition);
  return [
    loadLine({
      id: `${id}.column-${column}`,
      label: `Column ${column}, ${nameplates.length} at ${cell.value} %`,
      value: sumOf(nameplates).times(cell.value).div(100),
      expression: `(${nameplates.map((va) => `${print(va)} VA`).join(" + ")}) × ${print(decimal(cell.value).div(100))}`,
      cells: [cell],
      edition,
    }),
  ];
}

/** Column C with Notes 1 and 2: the demand is the last line; none for no appliance. */
export function columnC(id: string, nameplates: readonly number[], edition: Edition): readonly Worked[] {
  const count = nameplates.length;
  if (count === 0) return [];
  const row = rowFrom(RANGE_DEMAND, count)!;
  const byFormula = RANGE_DEMAND.rows[row as keyof typeof RANGE_DEMAND.rows][2] === null;
  const cells = (byFormula ? (["baseC", "eachC"] as const) : (["C"] as const)).map((column) => loadCell(RANGE_DEMAND, row, column, edition));
  const [first, each] = cells;
  const demand = loadLine({
    id: `${id}.column-C`,
    label: `Column C, ${count} ${count === 1 ? "appliance" : "appliances"}`,
    value: decimal(each?.value ?? 0)
      .times(count)
      .plus(first!.value)
      .times(1000),
    expression: each ? `(${first!.value} + ${each.value} × ${count}) × 1,000 VA` : `${first!.value} × 1,000 VA`,
    cells,
    edition,
  });
  const counted = nameplates.map((va) => Math.max(va, COLUMN_C_RATING));
  if (counted.every((va) => va === COLUMN_C_RATING)) return [demand];
  const average = loadLine({
    id: `${id}.average`,
    label: "Average rating, 12 kW for any less",
    value: sumOf(counted).div(count),
    expression: `(${tally(counted)}) / ${count}`,
    rules: [RULE],
    edition,
  });
  const over = decimal(average.value).minus(COLUMN_C_RATING).div(1000);
  const kilowatts = loadLine({
    id: `${id}.over-12`,
    label: "Whole kilowatts over 12",
    value: over.toDecimalPlaces(0, Decimal.ROUND_HALF_UP),
    unit: "count",
    expression: `(${print(average.value)} VA - 12,000 VA) / 1,000 VA`,
    rounding: "to the nearest whole kilowatt; a half counts up (major fraction)",
    inputs: [average],
    rules: [RULE],
    edition,
  });
  const increased = loadLine({
    id: `${id}.increased`,
    label: "Column C increased 5 % for each kilowatt over 12",
    value: decimal(kilowatts.value).times("0.05").plus(1).times(demand.value),
    expression: `${print(demand.value)} VA × (1 + 0.05 × ${kilowatts.value})`,
    inputs: [demand, kilowatts],
    rules: [RULE],
    edition,
  });
  return [demand, average, kilowatts, increased];
}

function tally(values: readonly number[]): string {
  const counts = new Map<number, number>();
  for (const va of values) counts.set(va, (counts.get(va) ?? 0) + 1);
  return [...counts].map(([va, n]) => `${n} × ${print(va)} VA`).join(" + ");
}

const sumOf = (values: readonly number[]) => values.reduce((sum, va) => sum.plus(va), decimal(0));
