import type { Check } from "./finding.js";
import { needsPerson, notApplicable } from "./outcome.js";

export const trenchOpen: Check = {
  id: "trench-open",
  title: "The trench stays open until it is inspected",
  rule: null,
  run: ({ design }) =>
    [...design.feeders, ...design.circuits].some((c) => c.segments.some((s) => s.segment.place === "buried"))
      ? [needsPerson("Trench", "hold point: do not cover before inspection", "call for the trench inspection with the raceway laid and the depth to be seen")]
      : [notApplicable("Trench", "nothing is buried")],
};
