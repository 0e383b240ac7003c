import type { Edition } from "./basis/edition.js";
import type { DesignedPull, DesignedSegment } from "./designed.js";
import type { Run } from "./job/schema.js";
import { Decimal, decimal } from "./quantity.js";
import { hotsAndNeutral } from "./segment-conductors.js";
import { racewayBendRadius } from "./sizing/bend-radius.js";
import { conductorWeight } from "./sizing/conductor-weight.js";
import { type Elbow, type HardPull, hardPull } from "./sizing/hard-pull.js";
import { type JamRatio, jamRatio } from "./sizing/jam-ratio.js";
import { pullsOf } from "./sizing/pull-groups.js";
import { sidewallLimit, tensionLimit, wedgingFactor } from "./sizing/pulling-limit.js";
import { type PullFigures, type PullGiven, type PullPart, pullFigures, pullingTension } from "./sizing/pulling-tension.js";
import { conductorCell, type TradeSize } from "./sizing/raceway-fill.js";
import { readCell } from "./tables/code-table.js";
import { CONDUCTOR } from "./tables/conductor.js";
import { RACEWAY } from "./tables/raceway.js";
import type { Worked } from "./worked.js";
import { worked } from "./worked.js";

interface Pulled {
  readonly designed: DesignedSegment;
  readonly tradeSize: TradeSize;
  readonly fill: NonNullable<DesignedSegment["fill"]>;
}

/** Each pull of a run: whether conductors can wedge, how hard they pull, and what eases it. Advice, no rule of the code. */
export function designPulls(run: Run, segments: readonly DesignedSegment[], edition: Edition): readonly DesignedPull[] {
  return pullsOf(run).map((indices, n) => {
    const id = `${run.id}.pull.${n + 1}`;
    const parts = indices.map((i) => segments[i]!);
    const pulled = parts.flatMap((designed): Pulled[] =>
      designed.fill === null ? [] : [{ designed, tradeSize: designed.tradeSize as TradeSize, fill: designed.fill }],
    );
    const whole = pulled.length === parts.length;
    const degrees = parts.reduce((sum, { bendTotal }) => sum + bendTotal, 0);
    const jam = likeliest(pulled.map((part, i) => jamOf(`${id}.jam.${i + 1}`, part, edition)));
    const tension = whole ? tensionOf(id, pulled, edition) : null;
    const hard = hardest(pulled.map((part, i) => hardOf(`${id}.hard.${i + 1}`, part, pulled[0]!, degrees, edition)));
    return {
      names: parts.map(({ segment }) => segment.name),
      degrees,
      jam,
      tension,
      hard,
      steps: [...(jam === null || jam.jam === "none" ? [] : [jam.straight, jam.bent]), ...(tension?.steps ?? [])],
    };
  });
}

/** The hots of a set, and the neutral where it is as they are: the conductors of one size that wedge, and that the grip pulls by. */
const likeOf = (designed: DesignedSegment) => ({
  size: designed.conductor.size,
  insulation: designed.segment.conductors.insulation,
  compact: designed.segment.conductors.stranding === "compact",
  count: hotsAndNeutral(designed.conductor, designed.neutral?.size ?? null)[0].count,
});

function jamOf(id: string, { designed, tradeSize }: Pulled, edition: Edition): JamRatio | null {
  const like = likeOf(designed);
  // A grounding conductor as large as the others is one more that can wedge.
  const count = like.count + (designed.grounding.size === like.size ? 1 : 0);
  return jamRatio({ id, raceway: designed.segment.method, tradeSize, conductor: { ...like, count }, edition });
}

const JAM_ORDER = ["none", "unlikely", "likely"] as const;
const likeliest = (found: readonly (JamRatio | null)[]): JamRatio | null =>
  found.reduce((worst, one) => (worst === null || (one !== null && JAM_ORDER.indexOf(one.jam) > JAM_ORDER.indexOf(worst.jam)) ? one : worst), null);

const hardest = (found: readonly (HardPull | null)[]): HardPull | null =>
  found.reduce(
    (worst, one) =>
      worst === null || (one !== null && Number(one.hard) * 100 + one.reasons.length > Number(worst.hard) * 100 + worst.reasons.length) ? one : worst,
    null,
  );

/** Where the tables have no radius of a bender for the raceway: that of a common elbow, in. Common practice, no source. */
const USUAL_RADIUS_IN = "4";

function hardOf(id: string, part: Pulled, first: Pulled, degrees: number, edition: Edition): HardPull | null {
  const { designed, tradeSize, fill } = part;
  const usual = () => racewayBendRadius({ id: `${id}.radius`, tradeSize, bender: "oneShot", edition })?.value ?? USUAL_RADIUS_IN;
  const elbows = (part === first ? (designed.segment.pull?.elbows ?? []) : []).map((elbow): Elbow => {
    const fromWallIn = elbow.from_wall;
    return elbow.kind === "body" ? { kind: "body", fromWallIn } : { kind: "swept", radiusIn: elbow.radius ?? usual(), fromWallIn };
  });
  const count = designed.conductor.count + 1 + (designed.segment.others?.current_carrying ?? 0);
  return hardPull({
    id,
    raceway: designed.segment.method,
    tradeSize,
    conductor: likeOf(designed),
    area: fill.area,
    count,
    elbows,
    totalDegrees: degrees,
    edition,
  });
}

/** A bore below this many conductor diameters holds no bundle of three: the mechanics do not reach so far, and the fill fails before. */
const LEAST_BORE_RATIO = "2.2";
const DRY_FRICTION = 0.5;
/** Up to this part of both its limits a pull is light. Common practice, no source. */
const LIGHT = "0.25";

function tensionOf(
  id: string,
  pulled: readonly Pulled[],
  edition: Edition,
): (NonNullable<DesignedPull["tension"]> & { readonly steps: readonly Worked[] }) | null {
  const first = pulled[0]!.designed;
  const given = first.segment.pull;
  const like = likeOf(first);
  const material = first.segment.conductors.material;
  const each = conductorWeight({ id: `${id}.weight-each`, ...like, material, edition });
  const alike = first.grounding.size === like.size;
  const ground = alike ? each : conductorWeight({ id: `${id}.weight-ground`, ...like, size: first.grounding.size, material, edition });
  const neutral = first.neutral && conductorWeight({ id: `${id}.weight-neutral`, ...like, size: first.neutral.size, material, edition });
  const cmil = readCell(CONDUCTOR, like.size, "cmil", edition);
  const outside = conductorCell(like, "diameter", edition);
  const bores = pulled.map(({ designed, tradeSize }) => readCell(RACEWAY, `${designed.segment.method} ${tradeSize}`, "inside", edition));
  if (each === null || ground === null || (first.neutral && neutral === null) || cmil === null || outside === null || bores.some((bore) => bore === null))
    return null;
  const bore = bores.map((cell) => cell!.value).sort((a, b) => decimal(a).cmp(b))[0]!;
  if (decimal(bore).div(outside.value).lt(LEAST_BORE_RATIO)) return null;
  const pressing = wedgingFactor({ id: `${id}.pressing`, boreIn: bore, conductorIn: outside.value, count: first.conductor.count });
  const weights = [each, ...(neutral ? [neutral] : []), ...(alike ? [] : [ground])];
  const weight = worked({
    id: `${id}.weight`,
    label: "Weight of the conductors together",
    value: decimal(each.value)
      .times(like.count)
      .plus(neutral?.value ?? 0)
      .plus(ground.value)
      .toFixed(),
    unit: "lb/ft",
    expression: `${like.count} × ${each.value} + ${neutral ? `${neutral.value} + ` : ""}${ground.value}`,
    inputs: weights.map((one) => one.id),
    citations: each.citations,
    edition,
  });
  const friction = given?.friction ?? DRY_FRICTION;
  const grip = given?.grip ?? "basket";
  const ways = (given?.from ? [given.from] : (["end", "start"] as const)).map((pulledFrom) => {
    const pull: PullGiven = { parts: partsOf(pulled, pulledFrom), weight: weight.value, friction, pressing: pressing.value };
    return { pulledFrom, pull, figures: pullFigures(pull) };
  });
  const limit = tensionLimit({ id: `${id}.limit`, cmil: cmil.value, count: like.count, material, grip });
  const allowed = sidewallLimit({ id: `${id}.sidewall-limit` });
  const strain = ({ figures }: (typeof ways)[number]) =>
    Math.max(endOf(figures).toNumber() / Number(limit.value), worstOf(figures).toNumber() / Number(allowed.value));
  // Whoever pulls may choose the end, and is told which: the way that strains the conductors less.
  const way = ways.reduce((a, b) => (strain(b) < strain(a) ? b : a));
  const other = ways.find(({ pulledFrom }) => pulledFrom !== way.pulledFrom);
  const found = pullingTension({ id: `${id}.from-${way.pulledFrom}`, ...way.pull }, way.figures);
  const sidewall = found.sidewalls.reduce<Worked | null>((a, b) => (a === null || decimal(b.value).gt(a.value) ? b : a), null);
  return {
    pulledFrom: way.pulledFrom,
    assumed: given?.from === undefined,
    how: `${grip} grip, friction ${friction}${given?.friction === undefined ? " taken, dry" : ""}${pulled.some(({ designed }) => designed.segment.bends.length > 0) ? ", bends taken half at each end of a stretch" : ""}`,
    otherWayLbf: other === undefined ? null : endOf(other.figures).toFixed(),
    end: found.end,
    limit,
    sidewall,
    sidewallLimit: allowed,
    light: endOf(way.figures).lte(decimal(limit.value).times(LIGHT)) && worstOf(way.figures).lte(decimal(allowed.value).times(LIGHT)),
    steps: [...weights, weight, pressing, ...found.steps, limit, ...(sidewall ? [sidewall, allowed] : [])],
  };
}

const worstOf = ({ sidewalls }: PullFigures) => Decimal.max(0, ...sidewalls);
const endOf = ({ after }: PullFigures) => after.at(-1)!;

/** Pulled out at the end of the route, conductors go through it in its order; at the start, the other way and down what climbs. */
function partsOf(pulled: readonly Pulled[], from: "start" | "end"): readonly PullPart[] {
  const order = from === "end" ? pulled : [...pulled].reverse();
  return order.flatMap(({ designed: { segment, bendRadius } }): PullPart[] => {
    const rise = (segment.rise ?? 0) * (from === "end" ? 1 : -1);
    const straight: PullPart = { kind: "straight", feet: segment.length, ...(rise === 0 ? {} : { riseFt: rise }) };
    const radiusIn = segment.bend_radius ?? bendRadius?.value ?? USUAL_RADIUS_IN;
    const bends = (from === "end" ? segment.bends : [...segment.bends].reverse()).map((degrees): PullPart => ({ kind: "bend", degrees, radiusIn }));
    // A stretch turns where it meets the next: half of its bends at each end, an odd one where it costs more, behind its length.
    const first = Math.floor(bends.length / 2);
    return [...bends.slice(0, first), straight, ...bends.slice(first)];
  });
}
