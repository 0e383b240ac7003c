import { cite, citeOther, type Rule } from "../basis/citation.js";
import type { Edition, PerEdition } from "../basis/edition.js";
import type { Circuit } from "../job/schema.js";
import { Decimal, decimal, print } from "../quantity.js";
import { type Worked, worked } from "../worked.js";

const EV_SECTIONS: Rule["sections"] = { "2017": null, "2020": null, "2023": "220.57", "2026": "120.57" };
/** Least load of EV supply equipment in VA: 7,200 or the nameplate, whichever is larger. New in 2023; carried to 2026 from memory. */
const EV_LEAST_VA = 7200;
const EV_LEAST: PerEdition<Rule | null> = {
  "2017": null,
  "2020": null,
  "2023": { sections: EV_SECTIONS, standing: "published" },
  "2026": { sections: EV_SECTIONS, standing: "memory" },
};

/** The load of a new circuit on the service in VA: as entered, or volts × amperes, for EV supply not less than 220.57 asks. */
export function outletLoad(circuit: Circuit, volts: number, edition: Edition): Worked {
  const id = `${circuit.id}.load`;
  const label = "Load on the service";
  if (circuit.load !== undefined)
    return worked({
      id,
      label,
      value: decimal(circuit.load).toFixed(),
      unit: "VA",
      expression: `${print(circuit.load)} VA as entered`,
      citations: [citeOther("Job file", "load as entered", "practice")],
    });
  const nameplate = decimal(volts).times(circuit.current);
  const least = circuit.serves === "ev-supply" ? EV_LEAST[edition] : null;
  if (least === null)
    return worked({
      id,
      label,
      value: nameplate.toFixed(),
      unit: "VA",
      expression: `${volts} V × ${print(circuit.current)} A`,
      citations: [citeOther("Outlet rating", "volts × amperes as a fixed load", "practice")],
    });
  return worked({
    id,
    label,
    value: Decimal.max(EV_LEAST_VA, nameplate).toFixed(),
    unit: "VA",
    expression: `max(${EV_LEAST_VA}; ${volts} V × ${print(circuit.current)} A)`,
    citations: [cite(least, edition)!],
    edition,
  });
}
