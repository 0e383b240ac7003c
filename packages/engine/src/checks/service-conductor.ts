import { decimal, print } from "../quantity.js";
import { printSize } from "../tables/size.js";
import type { Check } from "./finding.js";
import { fail, needsPerson, notApplicable, pass } from "./outcome.js";

export const serviceConductor: Check = {
  id: "service-conductor",
  title: "Service conductors of a dwelling carry 83 % of its rating",
  rule: { sections: { "2017": "310.15(B)(7)", "2020": "310.12", "2023": "310.12", "2026": "310.12" }, standing: "published" },
  run: ({ job, design }) => {
    const { serviceConductor: found } = design;
    if (found === null) return [notApplicable("Service", "its conductors are not given")];
    if (found.needed === null || found.ampacity === null)
      return [
        needsPerson(
          "Service",
          found.ampacity === null ? "the ampacity table lacks the size given" : `the 83 % rule is for 100 A to 400 A, not ${job.service.rating} A`,
          "size the service conductors by the load and by the ampacity table",
        ),
      ];
    const says = `${print(found.ampacity.value)} A at 75 °C, ${print(found.needed.value)} A asked for ${job.service.rating} A`;
    if (decimal(found.ampacity.value).gte(found.needed.value)) return [pass("Service", `${says}, where no correction for heat or bundling applies`)];
    const { material } = job.service.conductors!;
    return [
      fail(
        "Service",
        says,
        found.leastSize === null ? "use conductors in parallel" : `use ${printSize(found.leastSize)} ${material}, or rate the service lower`,
      ),
    ];
  },
};
