import { everyEdition } from "../basis/edition.js";
import type { Check } from "./finding.js";
import { eachSegment, fail, pass } from "./outcome.js";

export const cableWet: Check = {
  id: "cable-wet",
  title: "NM-B stays out of wet and damp places",
  rule: { sections: everyEdition("334.12(B)(4)"), standing: "published" },
  run: eachSegment((s, _run, subject) => {
    if (s.segment.method !== "NM-B") return null;
    return s.wet
      ? fail(
          subject,
          "NM-B outdoors or in the ground; the inside of an outdoor or buried raceway is wet too",
          "end the NM-B in a box indoors; go on with THWN-2 or XHHW-2 in raceway, or UF-B",
        )
      : pass(subject, "NM-B in a dry place");
  }),
};
