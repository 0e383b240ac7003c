import type { Finding } from "../checks/finding.js";
import { design } from "../design.js";
import { decimal } from "../quantity.js";
import { judge } from "./lawful.js";
import { groupsOf, marked, withRun } from "./lone-run.js";
import { type Offer, type Offers, type OffersGiven, offersOf } from "./offers.js";
import { combinations } from "./search.js";

/** A lawful way to build a whole run. */
export interface Lawful {
  readonly offers: readonly Offer[];
  readonly drop: number;
  readonly weight: number;
}

export interface RunChoices {
  readonly offers: Offers;
  /** Lawful ways that no other beats in both cost and drop, cheapest first; only the cheapest where no more was asked. */
  readonly unbeaten: readonly Lawful[];
  /** Why there is none; empty when there is one. */
  readonly none: string;
  readonly standing: readonly Finding[];
}

/** Billionths of a per cent. */
export const billionths = (percent: number): number => decimal(percent).times(1e9).round().toNumber();

/**
 * Of offers for the same wire, those no other beats in both cost and drop. No check that fails reads raceway kind or trade size
 * across segments, so a dearer raceway on the same wire cannot make the whole lawful; if one ever does, the search is done again with all.
 */
export function leanest(offers: readonly Offer[]): readonly Offer[] {
  return offers.filter(
    (offer, i) =>
      !offers.some(
        (other, j) =>
          other.wire === offer.wire &&
          other.grounding === offer.grounding &&
          other.weight <= offer.weight &&
          other.drop <= offer.drop &&
          (other.weight < offer.weight || other.drop < offer.drop || j < i),
      ),
  );
}

/** The cheapest lawful way to build a run, and with `all` every unbeaten pair of cost and drop. Exhaustive over the offers. */
export function chooseRun(given: OffersGiven & { readonly all: boolean }): RunChoices {
  const offers = offersOf(given);
  const empty = offers.bySegment.findIndex((each) => each.length === 0);
  if (empty >= 0) {
    const names = offers.unpriced.length > 0 ? `; not priced: ${offers.unpriced.slice(0, 8).join(", ")}` : "";
    return { offers, unbeaten: [], none: `no lawful, priced way to build "${given.found.run.route[empty]!.name}"${names}`, standing: [] };
  }
  const lean = offers.bySegment.map(leanest);
  const found = search(given, lean);
  const settled = found.unforeseen && lean.some((each, i) => each.length < offers.bySegment[i]!.length) ? search(given, offers.bySegment) : found;
  return { offers, ...settled };
}

function search(given: OffersGiven & { readonly all: boolean }, bySegment: Offers["bySegment"]) {
  const { found } = given;
  const groups = groupsOf(found.run);
  const ruledOut: ((offers: readonly Offer[]) => boolean)[] = [];
  const unbeaten: Lawful[] = [];
  let unforeseen = false;
  let last: readonly Finding[] = [];
  const like = design({ job: withRun(given.job, found.run.id, marked), basis: given.basis });
  let limit = billionths(like.job.drop.limit_percent);
  for (let more = true; more; ) {
    more = false;
    for (const way of combinations({ bySegment, groups, limit })) {
      if (ruledOut.some((rules) => rules(way.offers))) continue;
      const judged = judge(given, like, way.offers);
      if (judged.standing.length > 0) return { unbeaten: [], none: "findings fail whatever is chosen", standing: judged.standing, unforeseen: false };
      if (judged.lawful) {
        unbeaten.push(way);
        // The bound of the search lets a drop be over by a rounding of one billionth a segment.
        limit = way.drop - 1 - bySegment.length;
        more = given.all && limit >= 0;
        break;
      }
      last = judged.failing;
      if (judged.rulesOut(way.offers)) ruledOut.push(judged.rulesOut);
      else if (judged.failing.length > 0) unforeseen = true;
    }
  }
  const none =
    unbeaten.length > 0
      ? ""
      : last.length > 0
        ? `every way fails: ${last.map((f) => `${f.subject}: ${f.says}`).join("; ")}`
        : "no way keeps the drop within the limit";
  return { unbeaten, none, standing: [] as readonly Finding[], unforeseen };
}
