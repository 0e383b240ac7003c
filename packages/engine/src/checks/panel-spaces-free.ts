import { everyEdition } from "../basis/edition.js";
import { panelsOf, runsOf } from "../job/tree.js";
import { freePairs, occupiedSpaces } from "../service/panel-spaces.js";
import type { Check } from "./finding.js";
import { fail, pass } from "./outcome.js";

export const panelSpacesFree: Check = {
  id: "panel-spaces-free",
  title: "The breaker has spaces of its own",
  rule: { sections: everyEdition("408.54"), standing: "memory" },
  run: ({ job }) =>
    panelsOf(job).flatMap(({ panel }) => {
      const taken = new Set(occupiedSpaces(panel));
      return runsOf(panel).map((run) => {
        const stands = "existing" in run && run.existing === true;
        const bad = run.breaker.spaces.filter((space) => space > panel.spaces || (taken.has(space) && !stands));
        for (const space of run.breaker.spaces) taken.add(space);
        const pairs = freePairs(panel);
        const mend =
          pairs.length > 0
            ? `free pairs: ${pairs
                .slice(0, 4)
                .map((p) => p.join(" and "))
                .join("; ")}`
            : "no adjacent pair is free: move a circuit, use tandem breakers only where the panel's label lists them, or add a panel";
        return bad.length > 0
          ? fail(run.name, `space ${bad.join(", ")} is taken or is not in a ${panel.spaces}-space panel`, mend)
          : pass(run.name, `spaces ${run.breaker.spaces.join(" and ")} of ${panel.name} are free`);
      });
    }),
};
