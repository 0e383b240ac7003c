import { everyEdition } from "../basis/edition.js";
import type { Check } from "./finding.js";
import { fail, needsPerson, notApplicable, pass } from "./outcome.js";

export const serviceLeastRating: Check = {
  id: "service-least-rating",
  title: "The service is rated for the whole house",
  rule: { sections: everyEdition("230.79(C)"), standing: "memory" },
  run: ({ job, design }) => {
    const { load_method, rating } = job.service;
    if (load_method !== "standard" && load_method !== "optional")
      return [notApplicable("Service", "the service stands already and is not sized anew: see its capacity")];
    const least = design.service.leastRating;
    if (least === null) return [needsPerson("Service", "the load is beyond the standard ratings known here", "have the service engineered")];
    const note = load_method === "optional" ? ", and the optional method is for 100 A and more (220.82(A))" : "";
    return rating < Number(least.value)
      ? [fail("Service", `${rating} A, ${least.value} A is the least for this load${note}`, `use a service of ${least.value} A`)]
      : [pass("Service", `${rating} A, ${least.value} A is the least for this load`)];
  },
};
