import { article220, type Edition, type PerEdition } from "../basis/edition.js";
import { type Decimal, decimal, print } from "../quantity.js";
import { type LoadRule, type LoadSum, loadLine } from "./load-line.js";

/** The least rating in VA of an appliance that counts as one of the four. 2020 on: 500 W or 1/4 hp, from memory. */
const LEAST_VA: PerEdition<number> = { "2017": 1, "2020": 500, "2023": 500, "2026": 500 };
const LEAST_COUNT = 4;
const RULE: LoadRule = { sections: article220("53"), standing: { "2017": "published", "2020": "published", "2023": "published", "2026": "memory" } };
const NAMEPLATE: LoadRule = { sections: article220("50"), standing: { "2017": "memory", "2020": "memory", "2023": "memory", "2026": "memory" } };

export interface FixedAppliance {
  readonly name: string;
  readonly va: number;
  /** A motor, or an appliance whose load is one: it may be the largest motor. */
  readonly motor?: boolean;
}

/**
 * Demand in VA of appliances fastened in place: 75 % of the nameplates where four or more are served. 220.53. Not ranges, dryers, space
 * heating, air conditioning or EV supply equipment: those are counted on their own lines.
 */
export function fixedApplianceDemand(given: { readonly id: string; readonly appliances: readonly FixedAppliance[]; readonly edition: Edition }): LoadSum {
  const { id, appliances, edition } = given;
  const counting = appliances.filter((a) => a.va >= LEAST_VA[edition]);
  const reduced = counting.length >= LEAST_COUNT ? counting : [];
  const whole = appliances.filter((a) => !reduced.includes(a));
  const list = (items: readonly FixedAppliance[]) => items.map((a) => `${print(a.va)} VA`).join(" + ");
  const total = (items: readonly FixedAppliance[]): Decimal => items.reduce((sum, a) => sum.plus(a.va), decimal(0));
  const atWhole =
    whole.length > 0 || reduced.length === 0
      ? [
          loadLine({
            id: `${id}.appliances-whole`,
            label: "Appliances fastened in place, at nameplate",
            value: total(whole),
            expression: list(whole) || "0 VA",
            rules: [NAMEPLATE],
            edition,
          }),
        ]
      : [];
  const atThreeQuarters =
    reduced.length > 0
      ? [
          loadLine({
            id: `${id}.appliances-75`,
            label: `Appliances fastened in place, ${reduced.length} at 75 %`,
            value: total(reduced).times("0.75"),
            expression: `(${list(reduced)}) × 0.75`,
            rules: [RULE],
            edition,
          }),
        ]
      : [];
  const parts = [...atWhole, ...atThreeQuarters];
  const sum = loadLine({
    id: `${id}.appliances`,
    label: "Appliances fastened in place",
    value: parts.reduce((all, line) => all.plus(line.value), decimal(0)),
    expression: parts.map((line) => `${print(line.value)} VA`).join(" + "),
    inputs: parts,
    edition,
  });
  return { total: sum, steps: [...parts, sum] };
}
