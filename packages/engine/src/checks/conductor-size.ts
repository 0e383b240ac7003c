import { everyEdition } from "../basis/edition.js";
import type { DesignedFeeder, DesignedRun, DesignedSegment } from "../designed.js";
import { decimal, print } from "../quantity.js";
import { compareSizes, printSize } from "../tables/size.js";
import type { Check, Outcome } from "./finding.js";
import { eachSegment, fail, pass } from "./outcome.js";
import { notRead, standsAlready } from "./standing.js";

export const conductorSize: Check = {
  id: "conductor-size",
  title: "The conductor carries the circuit in its place",
  rule: { sections: everyEdition("210.19(A), 215.2(A)"), standing: "published" },
  run: eachSegment((s, run, subject) =>
    s.ampacity === null || s.requiredSize === null || compareSizes(s.conductor.size, s.requiredSize) < 0
      ? fail(
          subject,
          `${printSize(s.conductor.size)} allows ${s.ampacity ? print(s.ampacity.value) : "no"} A here`,
          `use ${printSize(s.requiredSize)} or larger`,
        )
      : s.conductor.chosen === "computed" && standsAlready(run)
        ? notRead(subject, printSize(s.conductor.size), "conductors.size")
        : (neutralShort(s, run, subject) ??
          pass(subject, `${printSize(s.conductor.size)}, least ${printSize(s.requiredSize)}, ${s.ampacity ? print(s.ampacity.value) : "?"} A`)),
  ),
};

/** A feeder's neutral of its own size: carries its unbalance, 220.61, and is not smaller than the equipment grounding conductor, 215.2(A). */
function neutralShort({ neutral, requiredGrounding }: DesignedSegment, run: DesignedRun, subject: string): Outcome | null {
  if (neutral === null || !("neutralLoad" in run)) return null;
  const amperes = (run as DesignedFeeder).neutralLoad.value;
  const says = `neutral ${printSize(neutral.size)} allows ${neutral.ampacity ? print(neutral.ampacity.value) : "no"} A here, its load is ${print(amperes)} A`;
  if (neutral.ampacity === null || decimal(neutral.ampacity.value).lt(amperes))
    return fail(subject, says, "use a larger neutral, or one of the size of the hots");
  return compareSizes(neutral.size, requiredGrounding) < 0
    ? fail(
        subject,
        `neutral ${printSize(neutral.size)} is smaller than the ${printSize(requiredGrounding)} equipment ground`,
        `use ${printSize(requiredGrounding)} or larger`,
      )
    : null;
}
