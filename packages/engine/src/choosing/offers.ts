import type { Basis } from "../basis/basis.js";
import { design } from "../design.js";
import type { Design } from "../designed.js";
import { CABLES, type Job, RACEWAYS, type Segment } from "../job/schema.js";
import type { Allowances } from "../materials/allowances.js";
import { type CostRange, priceOf } from "../materials/cost.js";
import { stretchPieces } from "../materials/materials-list.js";
import type { PriceBook } from "../materials/price-book.js";
import { endsOf } from "../materials/stretch.js";
import { decimal } from "../quantity.js";
import { segmentFill } from "../sizing/segment-raceway.js";
import { isCable } from "../tables/cable.js";
import { conduitMaterial } from "../tables/impedance.js";
import { compareSizes, SIZES, type Size } from "../tables/size.js";
import { type FoundRun, groupsOf, loneRun, segmentMark, withRun } from "./lone-run.js";
import { trial } from "./trial.js";

export type Method = Segment["method"];
export type Material = Segment["conductors"]["material"];
export type ChosenTrade = NonNullable<Segment["trade_size"]>;
export const TRADES: readonly ChosenTrade[] = ["1/2", "3/4", "1", "1-1/4", "1-1/2", "2", "2-1/2", "3"];
export const OPEN_SIZES: readonly Size[] = SIZES.slice(SIZES.indexOf("14"), SIZES.indexOf("1000") + 1);

/** What may not change though the job leaves it to be chosen. */
export type Held = "material" | "method";

/** One lawful way to build one segment, with its share of the drop and its cost. */
export interface Offer {
  readonly method: Method;
  readonly material: Material;
  readonly size: Size;
  readonly grounding: Size;
  readonly tradeSize: ChosenTrade | null;
  /** What must be the same from box to box. */
  readonly wire: string;
  /** Per cent on the worst leg, in billionths: whole numbers, so that sums are exact. */
  readonly drop: number;
  /** Likely cost by measure, in millionths of the currency. */
  readonly weight: number;
  readonly cost: CostRange;
}

export interface Offers {
  /** For each segment. */
  readonly bySegment: readonly (readonly Offer[])[];
  /** Price-book names that were wanted and missing: what needs them was not compared. */
  readonly unpriced: readonly string[];
}

export interface OffersGiven {
  readonly job: Job;
  readonly basis: Basis;
  readonly found: FoundRun;
  readonly book: PriceBook;
  readonly allowances: Allowances;
  readonly held: readonly Held[];
}

/** Checks that read nothing of a segment but its place and its method: one size tells for all. */
const OF_METHOD = ["cable-wet", "emt-buried", "fmc-wet", "riser-protection", "burial-cover"];
/** No larger trade size holds less, so the least lawful one tells which are. */
const fromLeast = (least: ChosenTrade, given: ChosenTrade | undefined): readonly ChosenTrade[] =>
  given === undefined ? TRADES.slice(TRADES.indexOf(least)) : TRADES.indexOf(given) >= TRADES.indexOf(least) ? [given] : [];

/** Every priced way to build each segment that no check refuses by itself, worked once each by `design`. */
export function offersOf(asked: OffersGiven): Offers {
  const unpriced = new Set<string>();
  const given = alone(asked);
  const bySegment = given.found.run.route.map((_, i) => segmentOffers(given, i, unpriced));
  return { bySegment, unpriced: [...unpriced].sort() };
}

interface LoneGiven extends OffersGiven {
  /** The job with the run alone in it. */
  readonly lone: Job;
  readonly like: Design;
}

function alone(given: OffersGiven): LoneGiven {
  const { job, basis, found } = given;
  const by = loneRun(job, found);
  // The job's limit only raises sizes left open; in a trial each is set, or asked for its least.
  const lone = { ...by, drop: { ...by.drop, limit_percent: 20 } };
  // No finding about a segment alone reads a fault current, or the circuits that a feeder feeds.
  const made = design({ job: lone, basis });
  return { ...given, lone, like: { ...made, serviceFault: null, circuits: made.circuits.filter(({ run }) => run.id === found.run.id) } };
}

function segmentOffers(given: LoneGiven, i: number, unpriced: Set<string>): readonly Offer[] {
  const { found, held } = given;
  const asked = found.run.route[i]!;
  const fixed = asked.conductors.size;
  const keeps = held.includes("material") || fixed !== undefined;
  const methods = (held.includes("method") ? [asked.method] : [...CABLES, ...RACEWAYS]).filter((method) => {
    const { failing } = worked(given, i, method, isCable(method) ? "copper" : asked.conductors.material, fixed);
    return !failing.some((check) => OF_METHOD.includes(check));
  });
  // Raceways of one conduit material differ only in what they hold and cost: ampacity, ground and drop are worked once for all of them.
  const families = new Map<string, Method[]>();
  for (const method of methods) {
    const family = isCable(method) ? method : conduitMaterial(method);
    families.set(family, [...(families.get(family) ?? []), method]);
  }
  return [...families.values()].flatMap((alike) => {
    const materials: readonly Material[] = isCable(alike[0]!) ? ["copper"] : keeps ? [asked.conductors.material] : ["copper", "aluminum"];
    return materials.flatMap((material) => {
      const least = worked(given, i, alike[0]!, material, fixed).designed.requiredSize;
      if (least === null) return [];
      // A size under the least fails conductor-size, so the sizes start at the least.
      const sizes =
        fixed !== undefined ? [fixed] : OPEN_SIZES.filter((size) => compareSizes(size, least) >= 0 && isPriced(given, alike[0]!, material, size, unpriced));
      return sizes.flatMap((size) => atSize(given, i, alike, material, size, unpriced));
    });
  });
}

/** Whether the wire or cable of a size is priced; the rest of what it needs is looked up once it is worked. */
function isPriced({ book, found }: OffersGiven, method: Method, material: Material, size: Size, unpriced: Set<string>): boolean {
  const insulation = found.run.route[0]!.conductors.insulation;
  const named = isCable(method)
    ? Object.keys(book.items).some((key) => key.startsWith(`cable ${method} ${size}/`))
    : found.run.route.some((segment) => Object.hasOwn(book.items, `wire ${material} ${segment.conductors.insulation} ${size}`));
  if (!named) unpriced.add(isCable(method) ? `cable ${method} ${size}` : `wire ${material} ${insulation} ${size}`);
  return named;
}

/** One segment worked with the others of its pull alike and of no length, so that the run's drop is this segment's share. */
function worked(given: LoneGiven, i: number, method: Method, material: Material, size: Size | undefined) {
  const { found, basis, lone, like } = given;
  const groups = groupsOf(found.run);
  // The neighbours stay, since a riser is told by what it comes out of.
  const near = (j: number) => groups[j] === groups[i] || [j - 1, j + 1].some((k) => groups[k] === groups[i]);
  const tried = withRun(lone, found.run.id, (run) => {
    const route = run.route.map((segment, j) => {
      const { trade_size, ...free } = segment;
      if (groups[j] !== groups[i]) return { ...segment, length: 0, conductors: { ...segment.conductors, size: segment.conductors.size ?? ("4" as const) } };
      const mate = isCable(method) || isCable(segment.method) ? method : segment.method;
      const { size: _, ...rest } = segment.conductors;
      const conductors = { ...rest, material, ...(size === undefined ? {} : { size }) };
      return j === i ? { ...free, method, conductors } : { ...segment, method: mate, length: 0, conductors };
    });
    const kept = route.filter((_, j) => near(j));
    return { route: kept, boxes: run.boxes.filter((box) => kept.some((segment) => segment.name === box.after)) };
  });
  const made = trial({ job: tried, basis, id: found.run.id, like });
  const { run } = made;
  const about = (subject: string, j: number) => subject.includes(segmentMark(j));
  const failing = made.findings
    .filter((f) => f.verdict === "fail" && about(f.subject, i) && !found.run.route.some((_, j) => j !== i && about(f.subject, j)))
    .map((f) => f.check);
  return { run, designed: run.segments.find((s) => s.segment.name === segmentMark(i))!, failing };
}

function atSize(given: LoneGiven, i: number, alike: readonly Method[], material: Material, size: Size, unpriced: Set<string>): readonly Offer[] {
  const { run, designed, failing } = worked(given, i, alike[0]!, material, size);
  if (failing.length > 0) return [];
  const { found, basis, allowances, book } = given;
  const asked = found.run.route[i]!;
  const edition = basis.edition;
  const drop = decimal(run.drop.worstLegPercent.value).times(1e9).round().toNumber();
  const ends = endsOf(found, i);
  return alike.flatMap((method) => {
    const segment = { ...designed.segment, method };
    const fill = isCable(method)
      ? null
      : segmentFill({
          id: "candidate",
          segment,
          size,
          ground: designed.grounding.size,
          count: designed.conductor.count,
          ...(designed.neutral === null ? {} : { neutral: designed.neutral.size }),
          edition,
        });
    const least = TRADES.find((trade) => trade === fill?.tradeSize);
    if (!isCable(method) && least === undefined) return [];
    const trades = isCable(method) || least === undefined ? [null] : fromLeast(least, asked.trade_size);
    return trades.flatMap((tradeSize) => {
      const stretch = { id: `${found.run.id}.${i + 1}`, run, segment: { ...designed, segment, tradeSize }, ...ends, allowances, edition };
      const cost = measuredCost(book, stretchPieces(stretch), unpriced);
      if (cost === null) return [];
      const wire = `${isCable(method) ? method : material} ${size}`;
      return [{ method, material, size, grounding: designed.grounding.size, tradeSize, wire, drop, weight: cost.weight, cost: cost.range }];
    });
  });
}

/** Cost of pieces by measure: by the foot and the piece, before rounding to whole sticks; null when one is not priced. */
export function measuredCost(
  book: PriceBook,
  pieces: readonly { readonly key: string; readonly unit: "ft" | "each"; readonly quantity: string }[],
  unpriced: Set<string>,
): { readonly range: CostRange; readonly weight: number } | null {
  const sum = { low: decimal(0), likely: decimal(0), high: decimal(0) };
  let whole = true;
  for (const piece of pieces) {
    const found = priceOf(book, piece.key, piece.unit);
    if (!("price" in found)) {
      unpriced.add(piece.key);
      whole = false;
      continue;
    }
    const quantity = decimal(piece.quantity);
    for (const side of ["low", "likely", "high"] as const) sum[side] = sum[side].plus(quantity.times(found.price[side]));
  }
  if (!whole) return null;
  return { range: { low: sum.low.toFixed(6), likely: sum.likely.toFixed(6), high: sum.high.toFixed(6) }, weight: sum.likely.times(1e6).round().toNumber() };
}
