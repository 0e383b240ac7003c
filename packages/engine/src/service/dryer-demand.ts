import { article220, type Edition } from "../basis/edition.js";
import { decimal, print } from "../quantity.js";
import { rowFrom } from "../tables/code-table.js";
import { DRYER_DEMAND } from "../tables/dryer-demand.js";
import { type LoadSum, loadCell, loadLine, loadRule } from "./load-line.js";

const RULE = loadRule(article220("54"), "published");
const LEAST_VA = 5000;

/** Demand in VA of household electric clothes dryers, nameplates in VA: each 5,000 VA or nameplate, then the table's per cent. 220.54. */
export function dryerDemand(given: { readonly id: string; readonly dryers: readonly number[]; readonly edition: Edition }): LoadSum {
  const { id, dryers, edition } = given;
  if (dryers.length === 0) {
    const none = loadLine({ id: `${id}.total`, label: "Clothes dryers", value: decimal(0), expression: "0 VA", edition });
    return { total: none, steps: [none] };
  }
  const connected = loadLine({
    id: `${id}.connected`,
    label: "Clothes dryers, each 5,000 VA or nameplate",
    value: dryers.reduce((sum, va) => sum.plus(Math.max(va, LEAST_VA)), decimal(0)),
    expression: dryers.map((va) => `max(${print(LEAST_VA)} VA; ${print(va)} VA)`).join(" + "),
    rules: [RULE],
    edition,
  });
  const row = rowFrom(DRYER_DEMAND, dryers.length)!;
  const byFormula = DRYER_DEMAND.rows[row as keyof typeof DRYER_DEMAND.rows][1] !== null;
  const cells = (byFormula ? (["percent", "less", "over"] as const) : (["percent"] as const)).map((column) => loadCell(DRYER_DEMAND, row, column, edition));
  const [start, less, over] = cells;
  const percent = loadLine({
    id: `${id}.percent`,
    label: `Demand factor of ${dryers.length} ${dryers.length === 1 ? "dryer" : "dryers"}`,
    value: less && over ? decimal(start!.value).minus(decimal(less.value).times(dryers.length - Number(over.value))) : decimal(start!.value),
    unit: "%",
    expression: less && over ? `${start!.value} - ${less.value} × (${dryers.length} - ${over.value})` : start!.value,
    cells,
    edition,
  });
  const total = loadLine({
    id: `${id}.total`,
    label: "Clothes dryers",
    value: decimal(connected.value).times(percent.value).div(100),
    expression: `${print(connected.value)} VA × ${print(decimal(percent.value).div(100), 3)}`,
    inputs: [connected, percent],
    rules: [RULE],
    edition,
  });
  return { total, steps: [connected, percent, total] };
}
