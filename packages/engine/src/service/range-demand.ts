import { article220, type Edition } from "../basis/edition.js";
import { type Decimal, decimal, print } from "../quantity.js";
import type { Worked } from "../worked.js";
import { type LoadSum, loadLine, loadRule } from "./load-line.js";
import { columnC, percentColumn } from "./range-columns.js";

const RULE = loadRule(article220("55"), "published");
const LEAST_VA = 1750;
const COLUMN_B_VA = 3500;
const COLUMN_C_VA = 8750;
const COLUMN_C_RATING = 12000;
const MOST_VA = 27000;

/**
 * Demand in VA of household cooking appliances on a feeder or service, nameplates in VA. 220.55 with Table Notes 1 to 3.
 * Column C serves where every appliance is 12 kW or less, or every one is over 8¾ kW; Note 3 puts the small ones in columns A and B and
 * the large in C. Where both serve, the lesser, as the table permits. An appliance outside the table counts at nameplate.
 */
export function rangeDemand(given: { readonly id: string; readonly appliances: readonly number[]; readonly edition: Edition }): LoadSum {
  const { id, edition } = given;
  const inTable = given.appliances.filter((va) => va > LEAST_VA && va <= MOST_VA);
  const outside = given.appliances.filter((va) => va <= LEAST_VA || va > MOST_VA);
  const small = inTable.filter((va) => va < COLUMN_B_VA);
  const middle = inTable.filter((va) => va >= COLUMN_B_VA && va <= COLUMN_C_VA);
  const large = inTable.filter((va) => va > COLUMN_C_VA);
  const allInC = inTable.every((va) => va <= COLUMN_C_RATING) || large.length === inTable.length;
  const byNote3 = [...percentColumn(id, "A", small, edition), ...percentColumn(id, "B", middle, edition), ...columnC(`${id}.large`, large, edition)];
  const whole = allInC && large.length < inTable.length ? columnC(id, inTable, edition) : [];
  const note3 = sumOf(ends(byNote3));
  const columns = whole.length > 0 && decimal(whole.at(-1)!.value).lt(note3) ? whole : byNote3;
  const nameplates = outside.map((va, i) =>
    loadLine({
      id: `${id}.outside-${i + 1}`,
      label: "Outside the table, at nameplate",
      value: decimal(va),
      expression: `${print(va)} VA`,
      rules: [RULE],
      edition,
    }),
  );
  const parts = [...(columns === whole ? [whole.at(-1)!] : ends(columns)), ...nameplates];
  const total = loadLine({
    id: `${id}.total`,
    label: "Cooking appliances",
    value: sumOf(parts),
    expression: parts.map((line) => `${print(line.value)} VA`).join(" + ") || "0 VA",
    inputs: parts,
    rules: [RULE],
    edition,
  });
  return { total, steps: [...columns, ...nameplates, total] };
}

/** The lines that count: columns A and B as they stand and the last of column C's. */
function ends(lines: readonly Worked[]): readonly Worked[] {
  const percents = lines.filter((line) => /\.column-[AB]$/.test(line.id));
  return lines.length > percents.length ? [...percents, lines.at(-1)!] : percents;
}

const sumOf = (parts: readonly Worked[]) => parts.reduce<Decimal>((sum, line) => sum.plus(line.value), decimal(0));
