import { type Basis, unamended } from "../basis/basis.js";
import type { Finding } from "../checks/finding.js";
import { design } from "../design.js";
import type { Design } from "../designed.js";
import type { Job, Panel } from "../job/schema.js";
import { type Allowances, USUAL_ALLOWANCES } from "../materials/allowances.js";
import { type CostRange, totalCost } from "../materials/cost.js";
import type { PriceBook } from "../materials/price-book.js";
import { billionths, chooseRun, type Lawful, type RunChoices } from "./choose-run.js";
import { withOffers } from "./lawful.js";
import { designedRun, type FoundRun, runsIn } from "./lone-run.js";
import type { Held, Offer } from "./offers.js";

/** Feeder and circuit together, 215.2(A)(1) informational note: an aim, not a rule. */
const WHOLE_WAY_PERCENT = 5;

export interface ChooseGiven {
  readonly job: Job;
  readonly book: PriceBook;
  readonly basis?: Basis;
  readonly allowances?: Allowances;
  /** What keeps as the job has it; sizes and trade sizes that the job gives keep in any case. */
  readonly held?: readonly Held[];
}

export interface ChosenSegment extends Omit<Offer, "wire" | "weight" | "drop"> {
  readonly id: string;
  readonly name: string;
}
export type RunChoice = { readonly id: string; readonly name: string; readonly unpriced: readonly string[] } & (
  | {
      readonly found: true;
      readonly segments: readonly ChosenSegment[];
      readonly dropPercent: string;
      readonly fromServicePercent: string | null;
      readonly cost: CostRange;
      /** How many priced ways the segments were chosen from, one number each. */
      readonly offered: readonly number[];
    }
  | { readonly found: false; readonly why: string; readonly standing: readonly Finding[] }
);
export interface Chosen {
  /** The job with what was chosen written in. */
  readonly job: Job;
  readonly design: Design;
  readonly runs: readonly RunChoice[];
  /** Wire, raceway and fittings along the way by measure, before rounding to what is sold. */
  readonly total: CostRange;
  /** False where no set keeps every way from the service within 5 %; each run is then within its own limit alone. */
  readonly withinWholeWay: boolean;
}

/**
 * The cheapest lawful set of material, size, method and trade size for every run that is not there already, by likely cost by measure.
 * Lawful: no finding of the run fails, its drop keeps the job's limit, and where possible every way from the service keeps 5 %.
 */
export function chooseSizes(given: ChooseGiven): Chosen {
  const { job, book, basis = unamended(job.code.edition), allowances = USUAL_ALLOWANCES, held = [] } = given;
  const asGiven = design({ job, basis });
  const runs = runsIn(job);
  const tree = runs.some(({ kind }) => kind === "feeder");
  const choices = new Map<string, RunChoices>();
  for (const found of runs) if (!stands(found)) choices.set(found.run.id, chooseRun({ job, basis, found, book, allowances, held, all: tree }));
  const plan = (limit: number) => bestTree(job.service.panel, 0, limit, choices, asGiven);
  const within = plan(billionths(WHOLE_WAY_PERCENT));
  const best = within ?? plan(Number.MAX_SAFE_INTEGER)!;
  const settled = [...best.ways].reduce((so, [id, way]) => withOffers(so, id, way.offers), job);
  const made = design({ job: settled, basis });
  const shown = runs.flatMap((found) => {
    const of = choices.get(found.run.id);
    return of === undefined ? [] : [shownRun(found, of, best.ways.get(found.run.id), made)];
  });
  return {
    job: settled,
    design: made,
    runs: shown,
    total: totalCost(shown.flatMap((run) => (run.found ? [run.cost] : []))),
    withinWholeWay: within !== null,
  };
}

const stands = ({ run }: FoundRun) => "existing" in run && run.existing;

interface Plan {
  readonly weight: number;
  readonly ways: ReadonlyMap<string, Lawful>;
}

/** The lightest set for a panel's runs when so much drop was lost above; null when some way cannot keep the limit. A run with no lawful way is passed over. */
function bestTree(panel: Panel, above: number, limit: number, choices: ReadonlyMap<string, RunChoices>, asGiven: Design): Plan | null {
  const parts: (Plan | null)[] = [];
  for (const { id } of panel.circuits) {
    const ways = choices.get(id)?.unbeaten ?? [];
    const way = ways.find((each) => above + each.drop <= limit);
    if (way !== undefined) parts.push({ weight: way.weight, ways: new Map([[id, way]]) });
    else if (ways.length > 0) parts.push(null);
  }
  for (const feeder of panel.feeders) {
    const ways = choices.get(feeder.id)?.unbeaten ?? [];
    // One that stands, or has no lawful way, keeps the drop it has.
    const fixed = billionths(Number(designedRun(asGiven, feeder.id).drop.worstLegPercent.value));
    const plans = (ways.length > 0 ? ways : [null]).map((way) => {
      const below = above + (way?.drop ?? fixed);
      const rest = below <= limit ? bestTree(feeder.panel, below, limit, choices, asGiven) : null;
      if (rest === null || way === null) return rest;
      return { weight: rest.weight + way.weight, ways: new Map([...rest.ways, [feeder.id, way]]) };
    });
    parts.push(plans.reduce((a, b) => (a === null || (b !== null && b.weight < a.weight) ? b : a), null));
  }
  const whole = parts.filter((part) => part !== null);
  return whole.length < parts.length
    ? null
    : { weight: whole.reduce((sum, part) => sum + part.weight, 0), ways: new Map(whole.flatMap((part) => [...part.ways])) };
}

function shownRun({ run }: FoundRun, of: RunChoices, way: Lawful | undefined, made: Design): RunChoice {
  const head = { id: run.id, name: run.name, unpriced: of.offers.unpriced };
  if (way === undefined) return { ...head, found: false, why: of.none, standing: of.standing };
  const { drop } = designedRun(made, run.id);
  return {
    ...head,
    found: true,
    segments: way.offers.map(({ wire: _wire, weight: _weight, drop: _drop, ...offer }, i) => ({
      id: `${run.id}.${i + 1}`,
      name: run.route[i]!.name,
      ...offer,
      cost: totalCost([offer.cost]),
    })),
    dropPercent: drop.worstLegPercent.value,
    fromServicePercent: drop.fromService?.value ?? null,
    cost: totalCost(way.offers.map((offer) => offer.cost)),
    offered: of.offers.bySegment.map((each) => each.length),
  };
}
