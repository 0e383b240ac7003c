import type { Edition, PerEdition } from "../basis/edition.js";
import { Decimal, decimal, print } from "../quantity.js";
import type { Worked } from "../worked.js";
import { type LoadRule, type LoadSum, loadLine } from "./load-line.js";

/** Any load under an energy management system, from 2023; the 2026 number was seen in one article. */
const ANY: LoadRule = {
  sections: { "2017": null, "2020": null, "2023": "220.70", "2026": "120.7" },
  standing: { "2017": "memory", "2020": "memory", "2023": "one-source", "2026": "one-source" },
};
/** EV supply equipment alone, under automatic load management: 625.42 in every edition. */
const EV_ONLY: LoadRule = {
  sections: { "2017": "625.42", "2020": "625.42", "2023": "625.42(A)", "2026": "625.42(A)" },
  standing: { "2017": "memory", "2020": "memory", "2023": "one-source", "2026": "memory" },
};
const SYSTEM: LoadRule = {
  sections: { "2017": null, "2020": null, "2023": "750.30", "2026": "130.30" },
  standing: { "2017": "memory", "2020": "memory", "2023": "one-source", "2026": "one-source" },
};
const ALLOWED: Readonly<Record<"any" | "ev-only", PerEdition<boolean>>> = {
  any: { "2017": false, "2020": false, "2023": true, "2026": true },
  "ev-only": { "2017": true, "2020": true, "2023": true, "2026": true },
};

export interface ManagedLoad extends LoadSum {
  /** The same load at 125 %, for conductors and overcurrent devices: a setpoint counts as a continuous load. */
  readonly sizing: Worked;
}

/**
 * Load in VA of equipment held under a setpoint by an energy management system: the setpoint times the volts, or the equipment's own sum
 * where less. 220.70 with 750.30 (120.7 and 130.30 in 2026); for EV supply alone 625.42. Null where the edition gives no such count:
 * the loads then count by their own rules. The setpoint must be guarded against change by unqualified persons.
 */
export function managedLoad(given: {
  readonly id: string;
  readonly setpointAmperes: number;
  readonly volts: number;
  readonly managedVA: readonly number[];
  readonly manages: "any" | "ev-only";
  readonly edition: Edition;
}): ManagedLoad | null {
  const { id, setpointAmperes, volts, managedVA, manages, edition } = given;
  if (!ALLOWED[manages][edition]) return null;
  const rules = [...(manages === "any" ? [ANY] : [EV_ONLY]), SYSTEM];
  const connected = loadLine({
    id: `${id}.connected`,
    label: "Managed equipment at nameplate",
    value: managedVA.reduce((sum, va) => sum.plus(va), decimal(0)),
    expression: managedVA.map((va) => `${print(va)} VA`).join(" + ") || "0 VA",
    edition,
  });
  const setpoint = loadLine({
    id: `${id}.setpoint`,
    label: "Setpoint",
    value: decimal(setpointAmperes).times(volts),
    expression: `${print(setpointAmperes)} A × ${volts} V`,
    rules,
    edition,
  });
  const total = loadLine({
    id: `${id}.total`,
    label: "Managed load",
    value: Decimal.min(connected.value, setpoint.value),
    expression: `min(${print(connected.value)} VA; ${print(setpoint.value)} VA)`,
    inputs: [connected, setpoint],
    rules,
    edition,
  });
  const sizing = loadLine({
    id: `${id}.sizing`,
    label: "Managed load at 125 %, as a continuous load",
    value: decimal(total.value).times("1.25"),
    expression: `${print(total.value)} VA × 1.25`,
    inputs: [total],
    rules,
    edition,
  });
  return { total, sizing, steps: [connected, setpoint, total, sizing] };
}
