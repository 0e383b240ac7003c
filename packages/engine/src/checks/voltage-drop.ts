import { everyEdition } from "../basis/edition.js";
import type { DesignedSegment } from "../designed.js";
import { decimal, print } from "../quantity.js";
import { isCable } from "../tables/cable.js";
import { printSize } from "../tables/size.js";
import type { Check } from "./finding.js";
import { caution, eachRun, fail, pass } from "./outcome.js";

export const voltageDrop: Check = {
  id: "voltage-drop",
  title: "Voltage drop stays within the limit",
  rule: { sections: everyEdition("210.19(A), 215.2(A) informational notes"), standing: "memory" },
  run: eachRun(({ run, current, drop, rating, segments }, { job, basis }) => {
    const local = basis.drop;
    // Feeder and branch circuit together: the lower of the job's limit and the jurisdiction's.
    const wholeWay = Math.min(job.drop.total_percent, local?.wholeWayPercent ?? job.drop.total_percent);
    const required = local?.required ? `; required here: ${local.reason} (${local.citation})` : "";
    const over = (percent: string, limit: number) => job.drop.required || (local?.required === true && decimal(percent).gt(limit));
    const longest = `longest run by size: ${drop.longest.map((l) => `${printSize(l.size)} ${l.feet} ft`).join(", ")}`;
    if (decimal(drop.worstLegPercent.value).gt(job.drop.limit_percent))
      return (over(drop.worstLegPercent.value, local?.limitPercent ?? job.drop.limit_percent) ? fail : caution)(
        run.name,
        `${print(drop.worstLegPercent.value)} % at ${print(current)} A, more than ${job.drop.limit_percent} %${required}`,
        `${longest}; keep the ${rating} A breaker and raise the size${segments.some(heldCable) ? `, as wire in raceway: ${HELD}` : ""}`,
      );
    if (drop.fromService !== null && decimal(drop.fromService.value).gt(wholeWay))
      return (over(drop.fromService.value, local?.wholeWayPercent ?? wholeWay) ? fail : caution)(
        run.name,
        `${print(drop.fromService.value)} % from the service to the end, more than ${wholeWay} %${required}`,
        `raise the size of the feeder or of this run; ${longest}`,
      );
    return pass(run.name, `${print(drop.worstLegPercent.value)} % on the worst leg, ${print(drop.balancedPercent.value)} % balanced`);
  }),
};

const HELD = "the grounding conductor that comes in a larger cable falls short of the proportion, 250.122(B)";
/** A cable whose size was computed was raised as far as its own grounding conductor serves. */
const heldCable = ({ segment, conductor }: DesignedSegment) => isCable(segment.method) && conductor.chosen === "computed";
