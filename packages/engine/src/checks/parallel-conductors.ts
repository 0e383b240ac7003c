import type { Edition, PerEdition } from "../basis/edition.js";
import type { DesignedRun, DesignedSegment } from "../designed.js";
import { LEAST_PARALLEL, parallelFaults } from "../sizing/parallel.js";
import { compareSizes, printSize } from "../tables/size.js";
import type { Check, Outcome } from "./finding.js";
import { fail, foundOnRuns, needsPerson } from "./outcome.js";

const SECTIONS: PerEdition<string> = { "2017": "310.10(H)", "2020": "310.10(G)", "2023": "310.10(G)", "2026": "310.10(G)" } satisfies Record<Edition, string>;

export const parallelConductors: Check = {
  id: "parallel-conductors",
  title: "Conductors in parallel are large enough and alike",
  rule: { sections: SECTIONS, standing: "published" },
  run: foundOnRuns((run) => run.segments.filter((s) => s.sets > 1).map((s) => judge(run, s)), "one conductor to each phase"),
};

function judge(run: DesignedRun, s: DesignedSegment): Outcome {
  const subject = `${run.run.name}: ${s.segment.name}`;
  const { material, insulation } = s.segment.conductors;
  const faults = parallelFaults(
    Array.from({ length: s.sets }, () => ({ feet: s.segment.length, material, size: s.conductor.size, insulation, termination: "as given" })),
  );
  if (faults.length > 0)
    return fail(subject, `${s.sets} sets of ${printSize(s.conductor.size)}`, `use ${printSize(LEAST_PARALLEL)} or larger in parallel, or one larger conductor`);
  const odd = run.segments.find((other) => other.sets !== s.sets || compareSizes(other.conductor.size, s.conductor.size) !== 0);
  return needsPerson(
    subject,
    `${s.sets} sets of ${printSize(s.conductor.size)}, a whole ${printSize(s.grounding.size)} grounding conductor in each raceway${odd ? `; "${odd.segment.name}" differs` : ""}`,
    "measure: all of one phase of one length, metal, size, insulation and termination; raceways alike",
  );
}
