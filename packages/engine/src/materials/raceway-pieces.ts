import { cite, citeOther } from "../basis/citation.js";
import { type Edition, everyEdition } from "../basis/edition.js";
import { decimal, print } from "../quantity.js";
import { type RacewayJoint, racewayJoints, UNLIKE_JOINT } from "../raceway-joints.js";
import { expansion, fittingsNeeded } from "../sizing/expansion-fitting.js";
import { EARTH_MOVEMENT } from "../sizing/riser.js";
import { supportCount, supportSpacing } from "../sizing/supports.js";
import { isCable } from "../tables/cable.js";
import { isFlexible, isMetal } from "../tables/raceway-kind.js";
import { compareSizes } from "../tables/size.js";
import { TRADE_INCHES } from "../tables/trade-size.js";
import { each, feet, type Piece, some } from "./piece.js";
import type { Stretch } from "./stretch.js";

const SEAL = { sections: everyEdition("300.5(G), 300.7(A)"), standing: "memory" } as const;
const BUSHING = { sections: everyEdition("300.4(G)"), standing: "memory" } as const;
/** Elbows as sold; other angles are bent in the field from the stick. Common practice, no source. */
const SOLD_ELBOWS = [30, 45, 90];

/** Staples of a cable or straps of a raceway, by the support rule of its article; nothing underground. */
function supports({ segment, id, edition, end }: Stretch): Piece | null {
  const { method, place, length } = segment.segment;
  if (place === "buried" || length === 0) return null;
  const size = segment.tradeSize;
  const tradeSize = size !== null && Object.hasOwn(TRADE_INCHES, size) ? (size as keyof typeof TRADE_INCHES) : undefined;
  const spacing = supportSpacing({ id: `${id}.support`, method, ...(tradeSize ? { tradeSize } : {}), edition });
  if (spacing === null) return null;
  const count = supportCount({ id: `${id}.supports`, spacing, feet: length });
  const key = isCable(method) ? `staple ${method}` : `strap ${method} ${size}`;
  return each(key, isCable(method) ? `Staple for ${method}` : `Strap, ${method} ${size} in`, Number(count.value), id, {
    expression: count.expression,
    citations: count.citations,
    ...(end === "joined" ? { note: "one more where the raceway changes direction and wants it" } : {}),
  });
}

/** Everything along a stretch but its conductors: raceway, fittings, supports, cord, ribbon, seal, bushings. */
export function alongPieces(stretch: Stretch): readonly Piece[] {
  const { segment, id } = stretch;
  const { method, place, length } = segment.segment;
  const ribbon =
    place === "buried"
      ? feet("warning ribbon", "Warning ribbon over the trench", length, `${print(length, 6)} ft`, id, {
          citations: [citeOther("Common practice", "ribbon above a buried circuit; 300.5(D)(3) asks it for service conductors (from memory)", "practice")],
        })
      : null;
  if (isCable(method)) {
    const ends = [stretch.start, stretch.end].filter((end) => end !== "joined").length;
    return some([supports(stretch), each(`connector ${method}`, `Cable connector, ${method}`, ends, id), ribbon]);
  }
  return [...some([supports(stretch), ribbon]), ...racewayPieces(stretch, method)];
}

function racewayPieces(stretch: Stretch, method: string): readonly Piece[] {
  const { segment, id, allowances: a, edition, start, end } = stretch;
  const { place, length, bends } = segment.segment;
  const trade = segment.tradeSize;
  if (trade === null) return [];
  const sized = `${method} ${trade}`;
  const flexible = isFlexible(method);
  const waste = decimal(a.wastePercent).div(100).plus(1);
  const elbows = flexible ? [] : bends.filter((degrees) => SOLD_ELBOWS.includes(degrees));
  const kinds = SOLD_ELBOWS.map((degrees) => ({ degrees, count: elbows.filter((bend) => bend === degrees).length }));
  const joints = flexible ? 0 : Math.max(0, decimal(length).div(a.stickFt).ceil().toNumber() - 1) + elbows.length;
  const joint = start === "joined" ? racewayJoints(stretch.run).find(({ after }) => after === segment) : undefined;
  const joined = start === "joined" && joint === undefined ? 1 : 0;
  const ends = [start, end].filter((at) => at !== "joined").length;
  const large = compareSizes(segment.conductor.size, "4") >= 0;
  const grounding = method === "RMC" || method === "IMC";
  return some([
    feet(`raceway ${sized}`, `${method} ${trade} in`, decimal(length).times(waste), `${print(length, 6)} ft × ${waste.toFixed()}`, id, {
      sold: flexible ? "foot" : "stick",
    }),
    ...kinds.map(({ degrees, count }) => each(`elbow ${sized} ${degrees}`, `Elbow ${degrees}°, ${method} ${trade} in`, count, id)),
    each(`coupling ${sized}`, `Coupling, ${method} ${trade} in`, joints + joined, id, {
      expression: `${joints} + ${joined}`,
      note: "one at each joint between sticks and at each elbow",
    }),
    joint === undefined ? null : adapter(joint, sized, id, edition),
    each(`connector ${sized}`, `Connector or terminal adapter, ${method} ${trade} in`, ends, id),
    heatPiece(stretch, method, trade) ?? groundPiece(stretch, method, trade),
    feet("pull cord", "Pull cord", length, `${print(length, 6)} ft`, id),
    place === "indoors" || place === "attic"
      ? null
      : each("duct seal", "Duct seal, 1 lb", ends, id, {
          citations: [cite(SEAL, edition)!],
          note: "where the raceway comes in from the ground or from outdoors",
        }),
    large && isMetal(method)
      ? each(
          `${grounding ? "grounding bushing" : "insulating bushing"} ${trade}`,
          `${grounding ? "Grounding bushing with insulated throat" : "Insulating bushing"}, ${trade} in`,
          ends,
          id,
          { citations: [cite(BUSHING, edition)!], note: "4 AWG and larger; not wanted where the fitting has a smooth insulated throat" },
        )
      : null,
  ]);
}

/** The fitting that stands where an unlike raceway goes on without a box. */
function adapter({ before }: RacewayJoint, after: string, id: string, edition: Edition): Piece | null {
  const from = `${before.segment.method} ${before.tradeSize}`;
  return each(`adapter ${from} to ${after}`, `Reducer or adapter, ${from} in to ${after} in`, 1, id, {
    citations: [cite(UNLIKE_JOINT, edition)!],
    note: "listed for both raceways, smooth inside; no splice in it",
  });
}

const FREE = "free to slide both ways when the ground settles or heaves";

/** PVC outdoors that moves 1/4 in or more. */
function heatPiece({ segment, id, allowances: a, edition }: Stretch, method: string, trade: string): Piece | null {
  if (!method.startsWith("PVC") || segment.segment.place !== "outdoors") return null;
  const moved = expansion({ id: `${id}.expansion`, material: "PVC", feet: segment.segment.length, spanF: a.yearlySpanF, edition });
  const count = fittingsNeeded({ id: `${id}.expansion-fittings`, expansion: moved, travelIn: a.expansionTravelIn });
  return each(`expansion fitting ${trade}`, `PVC expansion fitting ${trade} in`, Number(count.value), id, {
    expression: count.expression,
    citations: count.citations,
    note: segment.segment.earth_movement === "expansion-fitting" ? FREE : "not wanted where bends or the ground are shown to take up the movement",
  });
}

/** The fitting a riser is told to have for the ground; one set for heat serves for both. */
function groundPiece({ segment, id, edition }: Stretch, method: string, trade: string): Piece | null {
  const { earth_movement: told, place } = segment.segment;
  if (told !== "expansion-fitting" || place !== "outdoors" || isFlexible(method)) return null;
  const [key, item] = method.startsWith("PVC")
    ? [trade, `PVC expansion fitting ${trade} in`]
    : [`${method} ${trade}`, `Expansion fitting, ${method} ${trade} in`];
  return each(`expansion fitting ${key}`, item, 1, id, { citations: [cite(EARTH_MOVEMENT, edition)!], note: FREE });
}
