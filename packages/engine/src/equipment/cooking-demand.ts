import type { Edition } from "../basis/edition.js";
import { type Decimal, decimal, type Numeric } from "../quantity.js";
import { cookingBranchLoad } from "../service/cooking-branch.js";
import type { LoadSum } from "../service/load-line.js";
import { unseen2026 } from "./known-rule.js";

export const COOKING_DEMAND = unseen2026({ "2017": "Table 220.55", "2020": "Table 220.55", "2023": "Table 220.55", "2026": "Table 120.55" }, "published");

export interface CookingAppliance {
  readonly is: "range" | "cooktop" | "oven";
  readonly kW: Numeric;
}

/** Branch-circuit load in VA of the appliances of one circuit, its last line named `id`; null for a set that is no one circuit (Note 4). */
export function cookingDemand(id: string, appliances: readonly CookingAppliance[], edition: Edition): LoadSum | null {
  const va = (is: CookingAppliance["is"]): number[] => appliances.filter((a) => a.is === is).map((a) => inVA(a.kW).toNumber());
  const [[range, ...ranges], [cooktop, ...cooktops]] = [va("range"), va("cooktop")];
  if (ranges.length + cooktops.length > 0) return null;
  const found = cookingBranchLoad({
    id,
    ...(range === undefined ? {} : { range }),
    ...(cooktop === undefined ? {} : { cooktop }),
    ovens: va("oven"),
    edition,
  });
  if (found === null) return null;
  const total = { ...found.total, id, label: "Branch-circuit load of the cooking equipment" };
  return { total, steps: found.steps.map((step) => (step === found.total ? total : step)) };
}

const inVA = (kW: Numeric): Decimal => decimal(kW).times(1000);
