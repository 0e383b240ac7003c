import { everyEdition } from "../basis/edition.js";
import type { Check } from "./finding.js";
import { eachSegment, fail, pass } from "./outcome.js";

export const emtBuried: Check = {
  id: "emt-buried",
  title: "EMT is not buried",
  rule: { sections: everyEdition("358.10(B)"), standing: "memory" },
  run: eachSegment((s, _run, subject) => {
    if (s.segment.place !== "buried") return null;
    return ["EMT", "ENT", "FMC", "NM-B"].includes(s.segment.method)
      ? fail(subject, `${s.segment.method} in the ground`, "use PVC Schedule 40 or 80, RMC or IMC, or UF-B")
      : pass(subject, `${s.segment.method} in the ground`);
  }),
};
