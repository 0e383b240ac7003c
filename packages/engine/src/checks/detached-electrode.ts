import { everyEdition } from "../basis/edition.js";
import type { Check } from "./finding.js";
import { fail, needsPerson, notApplicable, pass } from "./outcome.js";

const MEND = "connect the panel's ground bar to the building's electrodes (two rods 6 ft apart where there is nothing better); never to the neutral";

export const detachedElectrode: Check = {
  id: "detached-electrode",
  title: "A detached building on a feeder has its grounding electrode",
  rule: { sections: everyEdition("250.32(A)"), standing: "published" },
  run: ({ design }) =>
    design.feeders.map(({ feeder }) => {
      const name = feeder.panel.name;
      if (feeder.building === "same") return notApplicable(name, "in the same building as its supply");
      if (feeder.electrode === true) return pass(name, "grounding electrode, as entered");
      if (feeder.building === "pedestal")
        return needsPerson(name, "a pedestal may count as a structure", `ask the authority whether it wants an electrode; if so: ${MEND}`);
      return feeder.electrode === undefined
        ? needsPerson(name, "no grounding electrode named", MEND)
        : fail(name, "no grounding electrode at the building", MEND);
    }),
};
