import { everyEdition } from "../basis/edition.js";
import { compareSizes, printSize, type Size } from "../tables/size.js";
import type { Check } from "./finding.js";
import { fail, needsPerson, notApplicable, pass } from "./outcome.js";

export const electrodeConductor: Check = {
  id: "electrode-conductor",
  title: "The grounding electrode conductor is large enough",
  rule: { sections: everyEdition("250.66"), standing: "published" },
  run: ({ job, design }) => {
    const { electrode } = job.service;
    const least = design.serviceConductor?.electrode ?? null;
    if (electrode === undefined) return [notApplicable("Service", "its electrodes are not given: it stands as it is")];
    if (least === null) return [needsPerson("Service", "the service conductors are not given", "read their size: the electrode conductor goes by them")];
    const asked = `${printSize(least.value as Size)} ${electrode.material}`;
    if (electrode.size === undefined) return [needsPerson("Service", `${asked} asked for ${electrode.electrodes.join(", ")}`, `see ${asked} or larger on it`)];
    return compareSizes(electrode.size, least.value as Size) < 0
      ? [fail("Service", `${printSize(electrode.size)} ${electrode.material}, ${asked} asked for ${electrode.electrodes.join(", ")}`, `use ${asked}`)]
      : [pass("Service", `${printSize(electrode.size)} ${electrode.material}, ${asked} asked`)];
  },
};
