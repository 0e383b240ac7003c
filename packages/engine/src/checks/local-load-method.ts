import type { Check } from "./finding.js";
import { fail, notApplicable, pass } from "./outcome.js";

export const localLoadMethod: Check = {
  id: "local-load-method",
  title: "Load calculation method the jurisdiction takes",
  rule: null,
  run: ({ job, basis }) => {
    const local = basis.loadMethods;
    const method = job.service.load_method;
    if (local === null) return [notApplicable("Service", "the jurisdiction names no method")];
    return local.methods.includes(method)
      ? [pass("Service", `${method} is taken here`)]
      : [fail("Service", `${method} is not taken here: ${local.reason} (${local.citation})`, `calculate by ${local.methods.join(" or ")}`)];
  },
};
