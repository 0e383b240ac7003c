import { type Edition, everyEdition } from "../basis/edition.js";
import type { DesignedFeeder } from "../designed.js";
import { type Electrode, electrodeConductor } from "../sizing/electrode-conductor.js";
import { isCable } from "../tables/cable.js";
import { compareSizes, printSize, type Size } from "../tables/size.js";
import type { Check } from "./finding.js";
import { fail, needsPerson, notApplicable, pass } from "./outcome.js";

const MEND = "connect the panel's ground bar to the building's electrodes (two rods 6 ft apart where there is nothing better); never to the neutral";

export const detachedElectrode: Check = {
  id: "detached-electrode",
  title: "A detached building on a feeder has its grounding electrode",
  rule: { sections: everyEdition("250.32(A)"), standing: "published" },
  run: ({ design, basis }) =>
    design.feeders.map((designed) => {
      const { feeder } = designed;
      const name = feeder.panel.name;
      if (feeder.building === "same") return notApplicable(name, "in the same building as its supply");
      const conductors = conductorsTo(designed, basis.edition);
      if (feeder.electrode === true) return pass(name, `grounding electrode, as entered; ${conductors}`);
      const mend = `${MEND}; ${conductors}`;
      if (feeder.building === "pedestal")
        return needsPerson(name, "a pedestal may count as a structure", `ask the authority whether it wants an electrode; if so: ${mend}`);
      return feeder.electrode === undefined
        ? needsPerson(name, "no grounding electrode named", mend)
        : fail(name, "no grounding electrode at the building", mend);
    }),
};

/** Least copper conductors to the electrodes, by the feeder's largest hot: Table 250.66, and 250.66(A) to rods. */
function conductorsTo({ segments }: DesignedFeeder, edition: Edition): string {
  const largest = segments.reduce((a, b) => (compareSizes(b.conductor.size, a.conductor.size) > 0 ? b : a));
  const { segment, conductor, sets } = largest;
  const supply = { size: conductor.size, material: isCable(segment.method) ? "copper" : segment.conductors.material, sets } as const;
  const size = (electrodes: readonly Electrode[]) =>
    printSize(electrodeConductor({ id: "electrode", supply, material: "copper", electrodes, edition }).size as Size);
  const [any, rods] = [size(["structural-metal"]), size(["rod"])];
  return `electrode conductor ${any} copper or larger${rods === any ? "" : `, ${rods} to rods alone`}`;
}
