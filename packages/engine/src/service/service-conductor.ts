import { cite } from "../basis/citation.js";
import type { Edition } from "../basis/edition.js";
import type { Job } from "../job/schema.js";
import { decimal, print } from "../quantity.js";
import { dwellingServiceConductor } from "../sizing/dwelling-service.js";
import { electrodeConductor } from "../sizing/electrode-conductor.js";
import { AMPACITY } from "../tables/ampacity.js";
import { readCell } from "../tables/code-table.js";
import { printSize, type Size } from "../tables/size.js";
import { type Worked, worked } from "../worked.js";

const LEAST_RATING = 100;
const MOST_RATING = 400;
const PARALLEL = { sections: { "2017": "310.10(H)", "2020": "310.10(G)", "2023": "310.10(G)", "2026": "310.10(G)" }, standing: "memory" } as const;

export interface ServiceConductor {
  /** 83 % of the rating; null where the rule does not reach: under 100 A or over 400 A. */
  readonly needed: Worked | null;
  /** The conductors as given by the 75 °C column; null where the table lacks the size. */
  readonly ampacity: Worked | null;
  readonly leastSize: Size | null;
  /** Grounding electrode conductor for these; null where the electrodes are not told. */
  readonly electrode: Worked | null;
  readonly steps: readonly Worked[];
}

/** The service conductors of a dwelling against 83 % of the service's rating, and the grounding electrode conductor. Null where not given. */
export function serviceConductor(job: Job, edition: Edition): ServiceConductor | null {
  const { conductors: given, electrode: on, rating } = job.service;
  if (given === undefined) return null;
  const cell = readCell(AMPACITY, given.size, given.material === "copper" ? "cu75" : "al75", edition);
  const ampacity =
    cell &&
    worked({
      id: "service.conductor.ampacity",
      label: `Service conductors, ${given.sets > 1 ? `${given.sets} × ` : ""}${printSize(given.size)} ${given.material}, 75 °C`,
      value: decimal(cell.value).times(given.sets).toFixed(),
      unit: "A",
      expression: `${print(cell.value)} A × ${given.sets}`,
      cells: [cell],
      citations: given.sets > 1 ? [cite(PARALLEL, edition)!] : [],
      edition,
    });
  const rule =
    rating >= LEAST_RATING && rating <= MOST_RATING
      ? dwellingServiceConductor({ id: "service.conductor.needed", rating, material: given.material, edition })
      : null;
  const electrode =
    on === undefined
      ? null
      : electrodeConductor({ id: "service.electrode-conductor", supply: given, material: on.material, electrodes: on.electrodes, edition }).worked;
  return {
    needed: rule?.needed ?? null,
    ampacity,
    leastSize: rule?.size ?? null,
    electrode,
    steps: [rule?.needed, ampacity, electrode].flatMap((step) => step ?? []),
  };
}
