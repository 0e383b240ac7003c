import type { Edition, PerEdition } from "../basis/edition.js";
import { Decimal, decimal, print } from "../quantity.js";
import type { Worked } from "../worked.js";
import { type LoadRule, loadLine } from "./load-line.js";

const LEAST_VA = 7200;
const RULE: LoadRule = {
  sections: { "2017": "220.14(A)", "2020": "220.14(A)", "2023": "220.57", "2026": "120.57" },
  standing: { "2017": "memory", "2020": "memory", "2023": "published", "2026": "memory" },
};
/** The load of a known nameplate, with its pencil form. */
const KNOWN: PerEdition<(va: number) => { readonly value: Decimal; readonly expression: string }> = {
  "2017": nameplate,
  "2020": nameplate,
  "2023": floored,
  // The text of 2026 was not seen; word is that it goes by a known nameplate. The larger figure stands until it is.
  "2026": floored,
};

function floored(va: number) {
  return { value: Decimal.max(LEAST_VA, va), expression: `max(${print(LEAST_VA)} VA; ${print(va)} VA)` };
}

function nameplate(va: number) {
  return { value: decimal(va), expression: `${print(va)} VA` };
}

/**
 * Load in VA of one EV supply equipment on a feeder or service. 220.57 (2023): 7,200 VA or nameplate, the larger, carried to
 * 2026 from memory; before 2023, nameplate. An unknown nameplate (null) counts 7,200 VA in every edition.
 * The 125 % of a continuous load belongs to conductor and breaker sizing, not to this.
 */
export function evLoad(given: { readonly id: string; readonly nameplateVA: number | null; readonly edition: Edition }): Worked {
  const { id, nameplateVA, edition } = given;
  const known = nameplateVA === null ? { value: decimal(LEAST_VA), expression: `${print(LEAST_VA)} VA` } : KNOWN[edition](nameplateVA);
  return loadLine({ id, label: "EV supply equipment", ...known, rules: [RULE], edition });
}
