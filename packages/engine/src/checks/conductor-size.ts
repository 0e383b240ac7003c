import { everyEdition } from "../basis/edition.js";
import { print } from "../quantity.js";
import { compareSizes, printSize } from "../tables/size.js";
import type { Check } from "./finding.js";
import { eachSegment, fail, pass } from "./outcome.js";
import { notRead, standsAlready } from "./standing.js";

export const conductorSize: Check = {
  id: "conductor-size",
  title: "The conductor carries the circuit in its place",
  rule: { sections: everyEdition("210.19(A)"), standing: "published" },
  run: eachSegment((s, run, subject) =>
    s.ampacity === null || s.requiredSize === null || compareSizes(s.conductor.size, s.requiredSize) < 0
      ? fail(
          subject,
          `${printSize(s.conductor.size)} allows ${s.ampacity ? print(s.ampacity.value) : "no"} A here`,
          `use ${printSize(s.requiredSize)} or larger`,
        )
      : s.conductor.chosen === "computed" && standsAlready(run)
        ? notRead(subject, printSize(s.conductor.size), "conductors.size")
        : pass(subject, `${printSize(s.conductor.size)}, least ${printSize(s.requiredSize)}, ${s.ampacity ? print(s.ampacity.value) : "?"} A`),
  ),
};
