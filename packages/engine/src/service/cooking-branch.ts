import { article220, type Edition } from "../basis/edition.js";
import { decimal, print } from "../quantity.js";
import { type LoadSum, loadLine, loadRule } from "./load-line.js";
import { rangeDemand } from "./range-demand.js";

const RULE = loadRule(article220("55"), "published");

/**
 * Branch-circuit load in VA of cooking appliances. Table 220.55 Note 4: one range by the table; one wall oven or one cooktop at nameplate;
 * a cooktop with one or two ovens on one circuit in one room added and taken as one range; over 27 kW, outside the table, at
 * nameplate. Null for any other set.
 */
export function cookingBranchLoad(given: {
  readonly id: string;
  readonly range?: number;
  readonly cooktop?: number;
  readonly ovens?: readonly number[];
  readonly edition: Edition;
}): LoadSum | null {
  const { id, range, cooktop, ovens = [], edition } = given;
  const set = [...(range === undefined ? [] : [range]), ...(cooktop === undefined ? [] : [cooktop]), ...ovens];
  const alone = range === undefined && set.length === 1;
  const asOneRange = range === undefined && cooktop !== undefined && (ovens.length === 1 || ovens.length === 2);
  const rangeAlone = range !== undefined && set.length === 1;
  if (!alone && !asOneRange && !rangeAlone) return null;
  const sum = loadLine({
    id: `${id}.sum`,
    label: asOneRange ? "Cooktop and ovens taken as one range" : "Nameplate",
    value: set.reduce((all, va) => all.plus(va), decimal(0)),
    expression: set.map((va) => `${print(va)} VA`).join(" + "),
    rules: [RULE],
    edition,
  });
  if (alone) return { total: sum, steps: [sum] };
  const { total, steps } = rangeDemand({ id, appliances: [Number(sum.value)], edition });
  return { total, steps: [sum, ...steps] };
}
