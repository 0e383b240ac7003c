import { everyEdition } from "../basis/edition.js";
import { decimal, print } from "../quantity.js";
import { printSize } from "../tables/size.js";
import type { Check } from "./finding.js";
import { caution, eachRun, pass } from "./outcome.js";

/** Feeder and branch circuit together, by the same informational notes. */
const WHOLE_WAY_PERCENT = 5;

export const voltageDrop: Check = {
  id: "voltage-drop",
  title: "Voltage drop stays within the limit",
  rule: { sections: everyEdition("210.19(A) informational note"), standing: "memory" },
  run: eachRun(({ run, current, drop, rating }, { job }) => {
    const longest = `longest run by size: ${drop.longest.map((l) => `${printSize(l.size)} ${l.feet} ft`).join(", ")}`;
    if (decimal(drop.worstLegPercent.value).gt(job.drop.limit_percent))
      return caution(
        run.name,
        `${print(drop.worstLegPercent.value)} % at ${print(current)} A, more than ${job.drop.limit_percent} %`,
        `${longest}; keep the ${rating} A breaker and raise the size`,
      );
    if (drop.fromService !== null && decimal(drop.fromService.value).gt(WHOLE_WAY_PERCENT))
      return caution(
        run.name,
        `${print(drop.fromService.value)} % from the service to the end, more than ${WHOLE_WAY_PERCENT} %`,
        `raise the size of the feeder or of this run; ${longest}`,
      );
    return pass(run.name, `${print(drop.worstLegPercent.value)} % on the worst leg, ${print(drop.balancedPercent.value)} % balanced`);
  }),
};
