import { everyEdition } from "../basis/edition.js";
import { isCable } from "../tables/cable.js";
import { compareSizes, printSize } from "../tables/size.js";
import type { Check } from "./finding.js";
import { eachCircuit, fail, notApplicable, pass } from "./outcome.js";

export const spaGrounding: Check = {
  id: "spa-grounding",
  title: "A spa's equipment ground is insulated copper, 12 AWG or larger",
  rule: { sections: everyEdition("680.21(A), 680.42(C)"), standing: "one-source" },
  run: eachCircuit(({ circuit, segments, equipment: { kind } }) => {
    if (kind !== "spa") return notApplicable(circuit.name, "not a spa");
    for (const { segment, grounding } of segments) {
      const cable = isCable(segment.method);
      if (cable && segment.place !== "indoors" && segment.place !== "attic")
        return fail(
          circuit.name,
          `${segment.name}: the bare ground of ${segment.method} is not allowed outside the house`,
          "use wire in raceway with an insulated ground",
        );
      if (!cable && segment.conductors.material !== "copper") return fail(circuit.name, `${segment.name}: an aluminum equipment ground`, "use copper");
      if (compareSizes(grounding.size, "12") < 0)
        return fail(circuit.name, `${segment.name}: ${printSize(grounding.size)}`, "use 12 AWG copper or larger, insulated");
    }
    return pass(circuit.name, "copper, 12 AWG or larger; insulated in every raceway outside the house");
  }),
};
