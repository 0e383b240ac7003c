import { type Basis, unamended } from "../basis/basis.js";
import { design } from "../design.js";
import type { Design } from "../designed.js";
import type { Job, Run } from "../job/schema.js";
import { type Allowances, USUAL_ALLOWANCES } from "../materials/allowances.js";
import type { CostRange } from "../materials/cost.js";
import { stretchPieces } from "../materials/materials-list.js";
import type { PriceBook } from "../materials/price-book.js";
import { stretchesOf } from "../materials/stretch.js";
import { decimal } from "../quantity.js";
import { isCable } from "../tables/cable.js";
import type { Size } from "../tables/size.js";
import { designedRun, type FoundRun, groupsOf, marked, RUN_MARK, runsIn, withRun } from "./lone-run.js";
import { type Material, measuredCost, OPEN_SIZES } from "./offers.js";
import { trial } from "./trial.js";

/** Another lawful conductor for one pull of a run, the rest as designed. */
export interface Alternative {
  /** Names of the segments it is pulled through. */
  readonly segments: readonly string[];
  readonly material: Material;
  readonly size: Size;
  /** True for what the design has. */
  readonly chosen: boolean;
  /** Trade size of each segment: as the job gives it, else the least that holds it. */
  readonly tradeSizes: readonly (string | null)[];
  readonly dropPercent: string;
  /** Cost of the whole run's way by measure; null where something is not priced. */
  readonly cost: CostRange | null;
  readonly unpriced: readonly string[];
}

export interface RunAlternatives {
  readonly id: string;
  readonly name: string;
  readonly alternatives: readonly Alternative[];
}

/** For each pull of each new run, every material and size from 14 AWG to 1000 kcmil that is lawful there with the rest kept. */
export function lawfulAlternatives(given: {
  readonly job: Job;
  readonly book: PriceBook;
  readonly basis?: Basis;
  readonly allowances?: Allowances;
}): readonly RunAlternatives[] {
  const { job, book, basis = unamended(job.code.edition), allowances = USUAL_ALLOWANCES } = given;
  const made = design({ job, basis });
  return runsIn(job)
    .filter(({ run }) => !("existing" in run && run.existing))
    .map((found) => {
      const sizes = designedRun(made, found.run.id).segments.map((s) => s.conductor.size);
      const route = (run: Run) => ({ route: run.route.map((s, i) => ({ ...s, conductors: { ...s.conductors, size: sizes[i]! } })) });
      const settled = withRun(job, found.run.id, route);
      const like = design({ job: withRun(settled, found.run.id, marked), basis });
      const groups = groupsOf(found.run);
      const alternatives = [...new Set(groups)].flatMap((group) => {
        const members = found.run.route.map((_, i) => i).filter((i) => groups[i] === group);
        const materials: readonly Material[] = members.some((i) => isCable(found.run.route[i]!.method)) ? ["copper"] : ["copper", "aluminum"];
        return materials.flatMap((material) =>
          OPEN_SIZES.flatMap((size) => {
            const way = tried({ job: settled, like, basis, found, members, material, size, book, allowances });
            const now = members.every(
              (i) => sizes[i] === size && (isCable(found.run.route[i]!.method) || found.run.route[i]!.conductors.material === material),
            );
            return way === null ? [] : [{ ...way, chosen: now }];
          }),
        );
      });
      return { id: found.run.id, name: found.run.name, alternatives };
    });
}

function tried(given: {
  readonly job: Job;
  readonly like: Design;
  readonly basis: Basis;
  readonly found: FoundRun;
  readonly members: readonly number[];
  readonly material: Material;
  readonly size: Size;
  readonly book: PriceBook;
  readonly allowances: Allowances;
}): Omit<Alternative, "chosen"> | null {
  const { job, like, basis, found, members, material, size, book, allowances } = given;
  const { id } = found.run;
  const changed = withRun(job, id, (run) => ({
    route: run.route.map((s, i) => (members.includes(i) ? { ...s, conductors: { ...s.conductors, material, size } } : s)),
  }));
  const made = trial({ job: withRun(changed, id, marked), basis, id, like });
  if (made.findings.some((f) => f.verdict === "fail" && f.subject.includes(RUN_MARK))) return null;
  const { run } = made;
  if (decimal(run.drop.worstLegPercent.value).gt(made.limitPercent)) return null;
  const unpriced = new Set<string>();
  const cost = measuredCost(book, stretchesOf(run, allowances, basis.edition).flatMap(stretchPieces), unpriced);
  return {
    segments: members.map((i) => found.run.route[i]!.name),
    material,
    size,
    tradeSizes: members.map((i) => run.segments[i]!.tradeSize),
    dropPercent: run.drop.worstLegPercent.value,
    cost:
      cost === null
        ? null
        : { low: decimal(cost.range.low).toFixed(2), likely: decimal(cost.range.likely).toFixed(2), high: decimal(cost.range.high).toFixed(2) },
    unpriced: [...unpriced].sort(),
  };
}
