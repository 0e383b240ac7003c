import { everyEdition } from "../basis/edition.js";
import type { Check } from "./finding.js";
import { eachSegment, fail, pass } from "./outcome.js";

export const riserProtection: Check = {
  id: "riser-protection",
  title: "A riser exposed to damage is protected",
  rule: { sections: everyEdition("300.5(D)(4)"), standing: "published" },
  run: eachSegment((s, _circuit, subject) => {
    if (!s.segment.exposed_to_damage) return null;
    return ["RMC", "IMC", "PVC-80"].includes(s.segment.method)
      ? pass(subject, `${s.segment.method} where it can be struck`)
      : fail(subject, `${s.segment.method} where it can be struck`, "use PVC Schedule 80, RMC or IMC from the cover depth to 8 ft above grade");
  }),
};
