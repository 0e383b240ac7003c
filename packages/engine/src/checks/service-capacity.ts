import { everyEdition } from "../basis/edition.js";
import { decimal, print } from "../quantity.js";
import { leastRating } from "../service/service-load.js";
import type { Check } from "./finding.js";
import { fail, pass } from "./outcome.js";

export const serviceCapacity: Check = {
  id: "service-capacity",
  title: "The service carries the new work",
  rule: { sections: everyEdition("230.79"), standing: "memory" },
  run: ({ job, design }) => {
    const { marginVA, amperes, margin } = design.service;
    return decimal(marginVA.value).isNegative()
      ? [
          fail(
            "Service",
            `${amperes.value} A is more than the ${leastRating(job)} A of service, main and bus, by ${print(decimal(marginVA.value).neg())} VA`,
            "choose a smaller outlet, manage the load, measure the demand for a year (220.87), or enlarge the service",
          ),
        ]
      : [pass("Service", `${amperes.value} A on a ${leastRating(job)} A of service, main and bus; ${margin.value} A left`)];
  },
};
