import { citeOther } from "../basis/citation.js";
import type { Edition } from "../basis/edition.js";
import { decimal, type Numeric, print } from "../quantity.js";
import { readCell } from "../tables/code-table.js";
import { RACEWAY } from "../tables/raceway.js";
import { compareSizes, printSize, type Size } from "../tables/size.js";
import type { AnyTradeSize } from "../tables/trade-size.js";
import { type Worked, worked } from "../worked.js";
import { jamRatio } from "./jam-ratio.js";
import { conductorCell, fillPercent, leastRaceway, type TradeSize } from "./raceway-fill.js";

/** Yardsticks of the trade, none of them a rule. 8 × the conductor is what the code asks of nonshielded conductors above 1000 V (300.34, 305). */
const PRACTICE = citeOther("Common practice", "yardsticks of a hard pull", "practice");
const STIFF_FROM: Size = "6";
const EASY_RADIUS = "8";
const NEAR_WALL_IN = 24;
const FULL_PERCENT = 30;
const MANY_DEGREES = 270;

/** Where the raceway turns; `fromWallIn` is the straight raceway between the turn and the wall or enclosure the conductors are fed through, in. */
export type Elbow =
  /** A conduit body such as an LB, or a pulling elbow. */
  | { readonly kind: "body"; readonly fromWallIn: Numeric }
  /** A bend with a radius to its centre line, in. */
  | { readonly kind: "swept"; readonly radiusIn: Numeric; readonly fromWallIn: Numeric };

export interface HardPull {
  readonly hard: boolean;
  /** What makes it hard, each with its number. */
  readonly reasons: readonly { readonly says: string; readonly worked: Worked }[];
  readonly eases: readonly string[];
}

/**
 * A plain warning before anybody pulls: thick conductors through a tight elbow right after a wall, a full raceway, many bends, a jam.
 * Hard when a stiff conductor (6 AWG up) meets a tight elbow near a wall, or any two other reasons meet. Null when the tables lack the raceway or a conductor.
 */
export function hardPull(given: {
  readonly id: string;
  readonly raceway: string;
  readonly tradeSize: TradeSize;
  readonly conductor: { readonly size: Size; readonly insulation: string; readonly count: number; readonly compact?: boolean };
  /** All conductors together, in². */
  readonly area: Worked;
  /** Of all conductors, the small ones too. */
  readonly count: number;
  readonly elbows: readonly Elbow[];
  readonly totalDegrees: Numeric;
  readonly edition: Edition;
}): HardPull | null {
  const { id, raceway, tradeSize, conductor, edition } = given;
  const bore = readCell(RACEWAY, `${raceway} ${tradeSize}`, "inside", edition);
  const outside = conductorCell(conductor, "diameter", edition);
  const percent = fillPercent({ id: `${id}.fill`, area: given.area, raceway, tradeSize, edition });
  const jam = jamRatio({ id: `${id}.jam`, raceway, tradeSize, conductor, edition });
  if (bore === null || outside === null || percent === null || jam === null) return null;
  const stiff = compareSizes(conductor.size, STIFF_FROM) >= 0;
  const reasons: { says: string; worked: Worked }[] = [];
  let cornered = false;
  for (const [i, elbow] of given.elbows.entries()) {
    const ratio = innerRadius(`${id}.elbow.${i + 1}`, elbow, bore.value, outside.value, edition);
    if (!stiff || decimal(ratio.value).gte(EASY_RADIUS)) continue;
    const near = decimal(elbow.fromWallIn).lt(NEAR_WALL_IN);
    cornered ||= near;
    reasons.push({
      says: `${printSize(conductor.size)} turns in ${print(ratio.value, 1)} times its own diameter${near ? `, ${print(elbow.fromWallIn)} in from the wall it comes through` : ""}`,
      worked: ratio,
    });
  }
  if (decimal(percent.value).gt(FULL_PERCENT)) reasons.push({ says: `the raceway is ${print(percent.value, 0)} % full`, worked: percent });
  if (decimal(given.totalDegrees).gte(MANY_DEGREES))
    reasons.push({ says: `${print(given.totalDegrees)}° of bends in one pull`, worked: degrees(id, given.totalDegrees) });
  if (jam.jam === "likely") reasons.push({ says: "three like conductors can wedge side by side", worked: jam.bent });
  const hard = cornered || reasons.length >= 2;
  return { hard, reasons, eases: hard ? easing(given, cornered, jam.jam === "likely") : [] };
}

function innerRadius(id: string, elbow: Elbow, bore: string, outside: string, edition: Edition): Worked {
  // A conduit body has no curve of its own: the conductors turn within about its bore.
  const radius = elbow.kind === "swept" ? decimal(elbow.radiusIn).minus(decimal(bore).div(2)) : decimal(bore);
  return worked({
    id,
    label: "Radius of the inner side over conductor diameter",
    value: radius.div(outside).toSignificantDigits(8).toFixed(),
    unit: "factor",
    expression: elbow.kind === "swept" ? `(${print(elbow.radiusIn)} in - ${bore} in / 2) / ${outside} in` : `${bore} in / ${outside} in`,
    citations: [PRACTICE],
    edition,
  });
}

const degrees = (id: string, total: Numeric): Worked =>
  worked({
    id: `${id}.degrees`,
    label: "Bends in one pull",
    value: decimal(total).toFixed(),
    unit: "degrees",
    expression: `${print(total)}°`,
    citations: [PRACTICE],
  });

function easing(given: Parameters<typeof hardPull>[0], cornered: boolean, jams: boolean): string[] {
  const { raceway, area, count, edition } = given;
  const roomy = leastRaceway({ raceway, areaIn2: decimal(area.value).times(40).div(FULL_PERCENT).toFixed(), count, edition });
  const outside = (size: AnyTradeSize) => decimal(readCell(RACEWAY, `${raceway} ${size}`, "area", edition)?.value ?? 0);
  const larger = roomy !== null && outside(roomy).gt(outside(given.tradeSize));
  return [
    ...(larger ? [`trade size ${roomy} instead of ${given.tradeSize}: ${print(decimal(area.value).div(outside(roomy)).times(100), 0)} % full`] : []),
    ...(cornered
      ? [
          "a pull box on the wall in place of the elbow, or a swept bend beyond the wall",
          "feed from the elbow's side and pull away from it, one person at each end",
        ]
      : ["one more pull point, so that each pull has fewer bends"]),
    ...(jams ? ["conductors factory-twisted, or another trade size, against wedging"] : []),
    "pulling lubricant listed for the insulation; stranded conductors, heads staggered and taped to one bundle",
  ];
}
