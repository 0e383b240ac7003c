import { everyEdition } from "../basis/edition.js";
import type { Check } from "./finding.js";
import { eachSegment, fail, pass } from "./outcome.js";

export const fmcWet: Check = {
  id: "fmc-wet",
  title: "Flexible metal conduit stays dry",
  rule: { sections: everyEdition("348.12(1)"), standing: "memory" },
  run: eachSegment((s, _run, subject) => {
    if (s.segment.method !== "FMC") return null;
    return s.wet
      ? fail(subject, "flexible metal conduit in a wet place", "use LFMC or LFNC-B, PVC, or EMT above ground")
      : pass(subject, "flexible metal conduit in a dry place");
  }),
};
