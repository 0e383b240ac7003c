import type { Standing } from "../basis/citation.js";
import { article220, type Edition, type PerEdition } from "../basis/edition.js";
import { Decimal, decimal, print } from "../quantity.js";
import { LIGHTING_DEMAND } from "../tables/lighting-demand.js";
import { type LoadRule, type LoadSum, loadCell, loadLine, loadRule } from "./load-line.js";

/** General lighting and receptacles of a dwelling in VA a square foot, for feeders and services. The 2026 figure rests on one report. */
export const LIGHTING_UNIT_LOAD: PerEdition<{ readonly vaPerSquareFoot: number; readonly standing: Standing }> = {
  "2017": { vaPerSquareFoot: 3, standing: "published" },
  "2020": { vaPerSquareFoot: 3, standing: "published" },
  "2023": { vaPerSquareFoot: 3, standing: "published" },
  "2026": { vaPerSquareFoot: 2, standing: "one-source" },
};
const UNIT_LOAD: LoadRule = loadRule({ "2017": "Table 220.12", "2020": "220.14(J)", "2023": "220.41", "2026": "120.41" }, "published", "one-source");
const SMALL_APPLIANCE = loadRule(article220("52(A)"), "published");
const LAUNDRY = loadRule(article220("52(B)"), "published");
const CIRCUIT_VA = 1500;

export interface GeneralLighting {
  /** Outside dimensions, without open porches, garages, or unfinished spaces not adaptable for use. */
  readonly floorAreaFt2: number;
  /** At least two in a dwelling unit. 210.11(C)(1). */
  readonly smallApplianceCircuits: number;
  /** At least one in a dwelling unit with laundry of its own. 210.11(C)(2). */
  readonly laundryCircuits: number;
}

/** The connected lines in VA: lighting by area, small-appliance and laundry circuits at 1,500 VA, and their sum. 220.41, 220.52. */
export function generalLightingLoad(given: { readonly id: string; readonly dwelling: GeneralLighting; readonly edition: Edition }): LoadSum {
  const { id, dwelling, edition } = given;
  const { vaPerSquareFoot } = LIGHTING_UNIT_LOAD[edition];
  const lighting = loadLine({
    id: `${id}.lighting`,
    label: "General lighting and receptacles",
    value: decimal(dwelling.floorAreaFt2).times(vaPerSquareFoot),
    expression: `${print(dwelling.floorAreaFt2)} ft² × ${vaPerSquareFoot} VA/ft²`,
    rules: [UNIT_LOAD],
    edition,
  });
  const circuits = (key: string, label: string, count: number, rule: LoadRule) =>
    loadLine({
      id: `${id}.${key}`,
      label,
      value: decimal(CIRCUIT_VA).times(count),
      expression: `${count} × ${print(CIRCUIT_VA)} VA`,
      rules: [rule],
      edition,
    });
  const small = circuits("small-appliance", "Small-appliance circuits", dwelling.smallApplianceCircuits, SMALL_APPLIANCE);
  const laundry = circuits("laundry", "Laundry circuits", dwelling.laundryCircuits, LAUNDRY);
  const parts = [lighting, small, laundry];
  const total = loadLine({
    id: `${id}.general`,
    label: "General lighting, small-appliance and laundry",
    value: parts.reduce((sum, line) => sum.plus(line.value), decimal(0)),
    expression: parts.map((line) => `${print(line.value)} VA`).join(" + "),
    inputs: parts,
    edition,
  });
  return { total, steps: [...parts, total] };
}

/** Demand in VA of general lighting with small-appliance and laundry circuits: first 3,000 VA whole, to 120,000 at 35 %, the rest at 25 %. */
export function lightingDemand(given: { readonly id: string; readonly connectedVA: string; readonly edition: Edition }): LoadSum {
  const { id, edition } = given;
  const connected = decimal(given.connectedVA);
  const from = Object.keys(LIGHTING_DEMAND.rows)
    .map(Number)
    .sort((a, b) => a - b);
  const parts = from.flatMap((start, i) => {
    const part = Decimal.max(0, Decimal.min(connected, from[i + 1] ?? connected).minus(start));
    if (part.isZero()) return [];
    const cell = loadCell(LIGHTING_DEMAND, String(start), "percent", edition);
    return [
      loadLine({
        id: `${id}.part-${i + 1}`,
        label: start === 0 ? "First 3,000 VA whole" : `Part over ${print(start)} VA at ${cell.value} %`,
        value: part.times(cell.value).div(100),
        expression: `${print(part)} VA × ${print(decimal(cell.value).div(100))}`,
        cells: [cell],
        edition,
      }),
    ];
  });
  const total = loadLine({
    id: `${id}.lighting-demand`,
    label: "General lighting after demand factors",
    value: parts.reduce((sum, line) => sum.plus(line.value), decimal(0)),
    expression: parts.map((line) => `${print(line.value)} VA`).join(" + ") || "0 VA",
    inputs: parts,
    edition,
  });
  return { total, steps: [...parts, total] };
}
