import type { Check } from "./finding.js";
import { eachSegment, fail, pass } from "./outcome.js";

export const localWiringMethods: Check = {
  id: "local-wiring-methods",
  title: "Wiring methods the jurisdiction allows",
  rule: null,
  run: eachSegment(({ segment }, _run, subject, { basis }) => {
    const limits = basis.methodLimits.filter((limit) => limit.places.includes(segment.place));
    if (limits.length === 0) return null;
    const broken = limits.find((limit) => !limit.methods.includes(segment.method));
    return broken
      ? fail(subject, `${segment.method} is not taken here (${segment.place}): ${broken.reason} (${broken.citation})`, `use ${broken.methods.join(", ")}`)
      : pass(subject, `${segment.method} is allowed here`);
  }),
};
