import type { Check } from "./finding.js";
import { fail, needsPerson, notApplicable } from "./outcome.js";

export const managedLoad: Check = {
  id: "managed-load",
  title: "Loads under an energy management system",
  rule: { sections: { "2017": "625.42", "2020": "625.42", "2023": "220.70", "2026": "120.7" }, standing: "one-source" },
  run: ({ job, basis, design }) => {
    const { managed } = job.service;
    if (managed === undefined) return [notApplicable("Service", "no energy management system is counted on")];
    if (design.service.managed === null)
      return [
        fail(
          "Service",
          `the ${basis.edition} edition counts no setpoint but that of EV supply equipment alone: the loads were counted whole`,
          "take the setpoint out of the job, or ask the authority whether it accepts a later edition here",
        ),
      ];
    return [
      needsPerson(
        "Service",
        `new loads counted at no more than ${managed.setpoint} A together: ${managed.citation}`,
        "see the listing, the setpoint as set, and that only qualified persons can reach it",
      ),
    ];
  },
};
