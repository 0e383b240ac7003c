import { article220, type Edition } from "../basis/edition.js";
import { type Decimal, decimal, print } from "../quantity.js";
import type { Worked } from "../worked.js";
import { type LoadSum, loadLine, loadRule } from "./load-line.js";

/** One heating or cooling arrangement, nameplate in VA. */
export type ClimateLoad =
  | { readonly kind: "cooling"; readonly va: number }
  /** A heat pump with its supplemental electric heat; interlocked where the two cannot run together. */
  | { readonly kind: "heat-pump"; readonly va: number; readonly supplementVA: number; readonly interlocked: boolean }
  | { readonly kind: "space-heating"; readonly va: number; readonly separatelyControlled: number }
  | { readonly kind: "thermal-storage"; readonly va: number };

const RULE = loadRule(article220("82(C)"), "published");
const FOUR_UNITS = 4;

/**
 * The largest of the heating and cooling selections in VA. 220.82(C): cooling and heat pump whole, supplemental heat and space heating at
 * 65 %, at 40 % with four or more separately controlled units, thermal storage whole. An interlocked pair counts the larger of the two.
 */
export function optionalClimateLoad(given: { readonly id: string; readonly loads: readonly ClimateLoad[]; readonly edition: Edition }): LoadSum {
  const { id, edition } = given;
  const lines = given.loads.map((load, i) => {
    const { label, value, expression } = selection(load);
    return loadLine({ id: `${id}.${load.kind}-${i + 1}`, label, value, expression, rules: [RULE], edition });
  });
  const largest = lines.reduce<Worked | null>((a, b) => (a === null || decimal(b.value).gt(a.value) ? b : a), null);
  const total = loadLine({
    id: `${id}.climate`,
    label: "Heating or cooling, the largest selection",
    value: decimal(largest?.value ?? 0),
    expression: lines.length > 1 ? `max(${lines.map((line) => `${print(line.value)} VA`).join("; ")})` : `${print(largest?.value ?? 0)} VA`,
    inputs: lines,
    rules: [RULE],
    edition,
  });
  return { total, steps: [...lines, total] };
}

function selection(load: ClimateLoad): { readonly label: string; readonly value: Decimal; readonly expression: string } {
  const whole = { value: decimal(load.va), expression: `${print(load.va)} VA` };
  if (load.kind === "cooling") return { label: "Cooling at 100 %", ...whole };
  if (load.kind === "thermal-storage") return { label: "Thermal storage heating at 100 %", ...whole };
  if (load.kind === "space-heating") {
    const factor = load.separatelyControlled >= FOUR_UNITS ? "0.4" : "0.65";
    const label = `Electric space heating, ${load.separatelyControlled} separately controlled, at ${decimal(factor).times(100).toFixed()} %`;
    return { label, value: decimal(load.va).times(factor), expression: `${print(load.va)} VA × ${factor}` };
  }
  const supplement = decimal(load.supplementVA).times("0.65");
  if (load.supplementVA === 0) return { label: "Heat pump at 100 %", ...whole };
  if (load.interlocked) {
    return {
      label: "Heat pump or its supplemental heat at 65 %, interlocked",
      value: supplement.gt(load.va) ? supplement : decimal(load.va),
      expression: `max(${print(load.va)} VA; ${print(load.supplementVA)} VA × 0.65)`,
    };
  }
  return {
    label: "Heat pump at 100 % and supplemental heat at 65 %",
    value: supplement.plus(load.va),
    expression: `${print(load.va)} VA + ${print(load.supplementVA)} VA × 0.65`,
  };
}
