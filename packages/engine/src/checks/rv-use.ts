import type { Check } from "./finding.js";
import { eachCircuit, needsPerson, notApplicable } from "./outcome.js";

export const rvUse: Check = {
  id: "rv-use",
  title: "Use of the outlet is allowed where it stands",
  rule: null,
  run: eachCircuit(({ circuit }, { job }) =>
    circuit.serves === "rv-50" || circuit.serves === "rv-30"
      ? needsPerson(
          circuit.name,
          job.project.intended_use ?? "intended use not stated",
          "ask zoning whether an RV may be parked, connected or lived in on this lot",
        )
      : notApplicable(circuit.name, "not an RV outlet"),
  ),
};
