import { everyEdition } from "../basis/edition.js";
import { freePairs, occupiedSpaces } from "../service/panel-spaces.js";
import type { Check } from "./finding.js";
import { fail, pass } from "./outcome.js";

export const panelSpacesFree: Check = {
  id: "panel-spaces-free",
  title: "The breaker has spaces of its own",
  rule: { sections: everyEdition("408.54"), standing: "memory" },
  run: ({ job }) => {
    const { panel } = job.service;
    const taken = new Set(occupiedSpaces(panel));
    return panel.circuits.map((circuit) => {
      const bad = circuit.breaker.spaces.filter((space) => space > panel.spaces || taken.has(space));
      for (const space of circuit.breaker.spaces) taken.add(space);
      const pairs = freePairs(panel);
      const mend =
        pairs.length > 0
          ? `free pairs: ${pairs
              .slice(0, 4)
              .map((p) => p.join(" and "))
              .join("; ")}`
          : "no adjacent pair is free: move a circuit, use tandem breakers only where the panel's label lists them, or add a panel";
      return bad.length > 0
        ? fail(circuit.name, `space ${bad.join(", ")} is taken or is not in a ${panel.spaces}-space panel`, mend)
        : pass(circuit.name, `spaces ${circuit.breaker.spaces.join(" and ")} are free`);
    });
  },
};
