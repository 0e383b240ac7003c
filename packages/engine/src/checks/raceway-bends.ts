import { everyEdition } from "../basis/edition.js";
import type { Check } from "./finding.js";
import { eachSegment, fail, pass } from "./outcome.js";

export const racewayBends: Check = {
  id: "raceway-bends",
  title: "Bends between pull points stay within 360°",
  rule: { sections: everyEdition("352.26, 358.26, 344.26"), standing: "published" },
  run: eachSegment((s, _circuit, subject) => {
    if (s.segment.method === "NM-B" || s.segment.method === "UF-B") return null;
    return s.bendTotal > 360
      ? fail(subject, `${s.bendTotal}° of bends between pull points`, "add a pull box or conduit body")
      : pass(subject, `${s.bendTotal}° of bends`);
  }),
};
