import type { Edition } from "../basis/edition.js";
import type { DesignedSegment } from "../designed.js";
import type { Segment } from "../job/schema.js";
import { decimal } from "../quantity.js";
import { hotsAndNeutral } from "../segment-conductors.js";
import { isCable } from "../tables/cable.js";
import type { Size } from "../tables/size.js";
import type { Worked } from "../worked.js";
import { racewayBendRadius } from "./bend-radius.js";
import { expansion, fittingsNeeded, yearlySpan } from "./expansion-fitting.js";
import { nextBetterRaceway } from "./next-better.js";
import { conductorArea, fillLimit, fillPercent, leastRaceway, type TradeSize } from "./raceway-fill.js";
import { supportCount, supportSpacing } from "./supports.js";

export interface RacewayGiven {
  readonly id: string;
  readonly segment: Segment;
  readonly size: Size;
  readonly ground: Size;
  /** Hots and neutral of one set. */
  readonly count: number;
  /** The neutral's size where it is not the hots'. */
  readonly neutral?: Size;
  readonly edition: Edition;
}

/** Area, limit and per cent of a raceway with the least and the next better trade size; null for a cable, or where the tables hold none. */
export function segmentFill(given: RacewayGiven): (NonNullable<DesignedSegment["fill"]> & { readonly tradeSize: TradeSize }) | null {
  const { segment, id, size, ground, count, edition } = given;
  if (isCable(segment.method)) return null;
  const { insulation, stranding } = segment.conductors;
  const compact = stranding === "compact";
  const total = count + 1 + (segment.others?.current_carrying ?? 0);
  const wires = [...hotsAndNeutral({ size, count }, given.neutral ?? null), { size: ground, count: 1 }];
  const area = conductorArea({
    id: `${id}.area`,
    conductors: [...new Set(wires.map((wire) => wire.size))].map((one) => ({
      size: one,
      insulation,
      compact,
      count: wires.reduce((sum, wire) => sum + (wire.size === one ? wire.count : 0), 0),
    })),
    othersIn2: segment.others?.area_in2 ?? 0,
    edition,
  });
  if (area === null) return null;
  const raceway = segment.method;
  const smallest = leastRaceway({ raceway, areaIn2: area.value, count: total, edition });
  const tradeSize = segment.trade_size ?? smallest;
  if (tradeSize === null) return null;
  const limit = fillLimit({ id: `${id}.limit`, raceway, tradeSize, count: total, edition });
  const percent = fillPercent({ id: `${id}.fill`, area, raceway, tradeSize, edition });
  if (limit === null || percent === null) return null;
  const better = nextBetterRaceway({ id: `${id}.better`, raceway, area, count: total, edition });
  return { area, limit, percent, smallest, better: better.tradeSize, tradeSize };
}

/** How the stretch is fastened, bent and let expand, each figure worked; null where it is not of the kind. */
export function segmentFastening(
  id: string,
  segment: Segment,
  tradeSize: TradeSize | null,
  edition: Edition,
): Pick<DesignedSegment, "supports" | "bendRadius" | "expansion"> {
  const spacing =
    segment.place === "buried" ? null : supportSpacing({ id: `${id}.support`, method: segment.method, ...(tradeSize === null ? {} : { tradeSize }), edition });
  return {
    supports: spacing === null ? null : { ...spacing, count: supportCount({ id: `${id}.supports`, spacing, feet: segment.length }) },
    bendRadius: tradeSize === null || segment.bends.length === 0 ? null : racewayBendRadius({ id: `${id}.radius`, tradeSize, bender: "oneShot", edition }),
    expansion: segment.method.startsWith("PVC") && segment.place === "outdoors" ? movement(id, segment, edition) : null,
  };
}

/** Yearly span where the job gives none, °F, and travel of a usual fitting, in. Common practice, no source. */
export const USUAL_SPAN_F = 100;
export const USUAL_TRAVEL_IN = 4;
const fahrenheit = (celsius: number) => decimal(celsius).times("1.8").plus(32).toDecimalPlaces(2).toNumber();

function movement(id: string, segment: Segment, edition: Edition): DesignedSegment["expansion"] {
  const span = segment.temperature_span;
  const spanWorked: Worked | null = span
    ? yearlySpan({ id: `${id}.span`, lowF: fahrenheit(span.coldest), highF: fahrenheit(span.hottest), inSun: span.in_sun ?? true })
    : null;
  const spanF = spanWorked?.value ?? String(USUAL_SPAN_F);
  const found = expansion({ id: `${id}.expansion`, material: "PVC", feet: segment.length, spanF, edition });
  const fittings = fittingsNeeded({ id: `${id}.fittings`, expansion: found, travelIn: segment.expansion_travel ?? USUAL_TRAVEL_IN });
  return { span: spanWorked, spanF, change: found.change, byTable: found.byTable, needed: found.fittingNeeded, fittings };
}
