import { everyEdition } from "../basis/edition.js";
import { decimal, print } from "../quantity.js";
import { printSize } from "../tables/size.js";
import type { Check } from "./finding.js";
import { caution, eachCircuit, pass } from "./outcome.js";

export const voltageDrop: Check = {
  id: "voltage-drop",
  title: "Voltage drop stays within the limit",
  rule: { sections: everyEdition("210.19(A) informational note"), standing: "memory" },
  run: eachCircuit(({ circuit, drop, rating }, { job }) =>
    decimal(drop.worstLegPercent.value).gt(job.drop.limit_percent)
      ? caution(
          circuit.name,
          `${print(drop.worstLegPercent.value)} % at ${print(circuit.current)} A, more than ${job.drop.limit_percent} %`,
          `longest run by size: ${drop.longest.map((l) => `${printSize(l.size)} ${l.feet} ft`).join(", ")}; keep the ${rating} A breaker and raise the size`,
        )
      : pass(circuit.name, `${print(drop.worstLegPercent.value)} % on the worst leg, ${print(drop.balancedPercent.value)} % balanced`),
  ),
};
