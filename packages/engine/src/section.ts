import type { Edition } from "./basis/edition.js";
import type { DesignedRun, DesignedSegment } from "./designed.js";
import { decimal } from "./quantity.js";
import { trenchDepth } from "./sizing/burial.js";
import { readCell } from "./tables/code-table.js";
import { CONDUCTOR } from "./tables/conductor.js";
import { INSULATED_CONDUCTOR, INSULATION_ROWS } from "./tables/insulated.js";
import { RACEWAY } from "./tables/raceway.js";
import type { Size } from "./tables/size.js";
import type { Worked } from "./worked.js";

export interface SectionConductor {
  readonly role: "hot" | "neutral" | "ground";
  readonly mark: "L1" | "L2" | "N" | "G";
  readonly size: Size;
  readonly insulation: string;
  /** Over the insulation, in inches, from Chapter 9 Table 5. */
  readonly diameterIn: string;
}

/** What a cut across a raceway would show, in inches; the trench too where it is buried. */
export interface SegmentSection {
  readonly insideIn: string;
  readonly outsideIn: string;
  readonly conductors: readonly SectionConductor[];
  readonly fillPercent: string;
  readonly limitPercent: string;
  readonly trench: { readonly coverIn: string; readonly depth: Worked; readonly beddingIn: string } | null;
}

/** Sand or fine earth under the raceway. Common practice, no source. */
const BEDDING_IN = "2";
const QUARTER_PI = "0.78539816339744831";

/** The cut across one stretch of raceway; null for a cable, or where the tables lack a dimension. */
export function sectionOf(run: DesignedRun, s: DesignedSegment, edition: Edition): SegmentSection | null {
  if (s.tradeSize === null || s.fill === null) return null;
  const row = `${s.segment.method} ${s.tradeSize}`;
  const inside = readCell(RACEWAY, row, "inside", edition);
  const outside = readCell(RACEWAY, row, "outside", edition);
  if (inside === null || outside === null) return null;
  const { insulation } = s.segment.conductors;
  const table5 = (size: Size) => readCell(INSULATED_CONDUCTOR, `${INSULATION_ROWS[insulation] ?? insulation} ${size}`, "diameter", edition)?.value;
  const of = (role: SectionConductor["role"], mark: SectionConductor["mark"], size: Size): SectionConductor[] => {
    const diameterIn = table5(size) ?? readCell(CONDUCTOR, size, "diameter", edition)?.value;
    return diameterIn === undefined ? [] : [{ role, mark, size, insulation, diameterIn }];
  };
  const { size } = s.conductor;
  const hots = s.conductor.count - (run.neutral ? 1 : 0);
  const conductors = [
    ...of("hot", "L1", size),
    ...(hots > 1 ? of("hot", "L2", size) : []),
    ...(run.neutral ? of("neutral", "N", s.neutral?.size ?? size) : []),
    ...of("ground", "G", s.grounding.size),
  ];
  const whole = decimal(inside.value).pow(2).times(QUARTER_PI);
  const cut = {
    insideIn: inside.value,
    outsideIn: outside.value,
    conductors,
    fillPercent: decimal(s.fill.percent.value).toDecimalPlaces(1).toFixed(),
    limitPercent: decimal(s.fill.limit.value).div(whole).times(100).toDecimalPlaces(0).toFixed(),
  };
  if (s.leastCover === null) return { ...cut, trench: null };
  const coverIn = s.segment.cover === undefined ? s.leastCover.value : String(s.segment.cover);
  return {
    ...cut,
    trench: {
      coverIn,
      depth: trenchDepth({ id: `${s.leastCover.id}.trench`, cover: { ...s.leastCover, value: coverIn }, outsideIn: outside.value, beddingIn: BEDDING_IN }),
      beddingIn: BEDDING_IN,
    },
  };
}
