import { everyEdition } from "../basis/edition.js";
import { OUTLETS } from "../outlet.js";
import { decimal, print } from "../quantity.js";
import { AMPACITY } from "../tables/ampacity.js";
import { isCable } from "../tables/cable.js";
import { readCell } from "../tables/code-table.js";
import { printSize } from "../tables/size.js";
import type { Check } from "./finding.js";
import { eachSegment, fail, pass } from "./outcome.js";

export const conductorTerminals: Check = {
  id: "conductor-terminals",
  title: "The conductor suits the terminals it ends on",
  rule: { sections: everyEdition("110.14(C)(1)"), standing: "published" },
  run: eachSegment((s, { circuit, terminalC: ofCircuit }, subject, { basis }) => {
    const metal = s.segment.conductors.material === "copper" || isCable(s.segment.method) ? "cu" : "al";
    const terminalC = isCable(s.segment.method) ? 60 : ofCircuit;
    if (s.requiredSize === null) return fail(subject, "no size in the tables serves here", "choose another wiring method or a cooler way");
    const cell = readCell(AMPACITY, s.conductor.size, `${metal}${terminalC}`, basis.edition);
    const needed = decimal(circuit.current).times(OUTLETS[circuit.serves].continuous ? "1.25" : "1");
    if (cell === null || decimal(cell.value).lt(needed))
      return fail(
        subject,
        `${printSize(s.conductor.size)} at ${terminalC} °C terminals is good for ${cell?.value ?? "no"} A of ${print(needed)} A`,
        `use ${printSize(s.requiredSize)}, or show that breaker and outlet are both marked for 75 °C where the cable allows it`,
      );
    return pass(subject, `${cell.value} A at ${terminalC} °C terminals, ${print(needed)} A needed`);
  }),
};
