import { citeOther } from "../basis/citation.js";
import type { Edition } from "../basis/edition.js";
import { decimal, print } from "../quantity.js";
import { readCell } from "../tables/code-table.js";
import { COMPACT_CONDUCTOR, COMPACT_ROWS } from "../tables/compact-conductor.js";
import { FILL_PERCENT } from "../tables/fill-percent.js";
import { INSULATED_CONDUCTOR, INSULATION_ROWS } from "../tables/insulated.js";
import { RACEWAY } from "../tables/raceway.js";
import type { Size } from "../tables/size.js";
import { type Cell, type Worked, worked } from "../worked.js";

export const TRADE_SIZES = ["1/2", "3/4", "1", "1-1/4", "1-1/2", "2", "2-1/2", "3", "3-1/2", "4"] as const;
export type TradeSize = (typeof TRADE_SIZES)[number];
export interface FillConductor {
  readonly size: Size;
  readonly insulation: string;
  readonly count: number;
  /** Compact-stranded: Table 5A where it lists the conductor; Table 5, on the safe side, where it does not. */
  readonly compact?: boolean;
}

/** The cell of one conductor's diameter (in) or area (in²); null where the tables as entered have none. Chapter 9 Tables 5 and 5A. */
export function conductorCell(conductor: Omit<FillConductor, "count">, column: "diameter" | "area", edition: Edition): Cell | null {
  const { size, insulation, compact = false } = conductor;
  const dense = compact ? readCell(COMPACT_CONDUCTOR, `${COMPACT_ROWS[insulation] ?? ""} ${size}`, column, edition) : null;
  return dense ?? readCell(INSULATED_CONDUCTOR, `${INSULATION_ROWS[insulation] ?? ""} ${size}`, column, edition);
}

/** Total cross section of the conductors, in². Chapter 9 Table 5; `othersIn2` is the measured area of conductors of other circuits. Null when Table 5 as entered has no area for one of them. */
export function conductorArea(given: {
  readonly id: string;
  readonly conductors: readonly FillConductor[];
  readonly othersIn2: number;
  readonly edition: Edition;
}): Worked | null {
  const parts = given.conductors.flatMap((conductor) => {
    const cell = conductorCell(conductor, "area", given.edition);
    return cell === null ? [] : [{ conductor, cell }];
  });
  if (parts.length < given.conductors.length) return null;
  const total = parts.reduce((sum, { conductor, cell }) => sum.plus(decimal(cell.value).times(conductor.count)), decimal(given.othersIn2));
  const terms = parts.map(({ conductor, cell }) => `${conductor.count} × ${cell.value} in²`);
  return worked({
    id: given.id,
    label: "Area of conductors in the raceway",
    value: total.toFixed(),
    unit: "in2",
    expression: [...terms, ...(given.othersIn2 > 0 ? [`${given.othersIn2} in² of other circuits`] : [])].join(" + "),
    cells: parts.map(({ cell }) => cell),
    citations: given.othersIn2 > 0 ? [citeOther("Job file", "area of other circuits as entered", "practice")] : [],
    edition: given.edition,
  });
}

/** Area a raceway may be filled to by `count` conductors, in²; null for a trade size its table does not list. Chapter 9 Tables 1 and 4. */
export function fillLimit(given: {
  readonly id: string;
  readonly raceway: string;
  readonly tradeSize: TradeSize;
  readonly count: number;
  /** 24 in long or less between boxes: 60 %, Chapter 9 Note 4. */
  readonly nipple?: boolean;
  readonly edition: Edition;
}): Worked | null {
  const column = given.nipple ? "area60" : given.count === 1 ? "area53" : given.count === 2 ? "area31" : "area40";
  const cell = readCell(RACEWAY, `${given.raceway} ${given.tradeSize}`, column, given.edition);
  const percent = readCell(FILL_PERCENT, given.nipple ? "nipple" : given.count === 1 ? "1" : given.count === 2 ? "2" : "over 2", "percent", given.edition);
  if (cell === null || percent === null) return null;
  return worked({
    id: given.id,
    label: `${given.raceway} ${given.tradeSize} in, ${percent.value} % of its area`,
    value: cell.value,
    unit: "in2",
    expression: `${cell.value} in²`,
    cells: [cell, percent],
    edition: given.edition,
  });
}

/** Smallest trade size whose limit holds the area; null when none listed does. */
export function leastRaceway(given: {
  readonly raceway: string;
  readonly areaIn2: string;
  readonly count: number;
  /** 24 in long or less between boxes: 60 %, Chapter 9 Note 4. */
  readonly nipple?: boolean;
  readonly edition: Edition;
}): TradeSize | null {
  return (
    TRADE_SIZES.find((tradeSize) => {
      const limit = fillLimit({
        id: "candidate",
        raceway: given.raceway,
        tradeSize,
        count: given.count,
        nipple: given.nipple ?? false,
        edition: given.edition,
      });
      return limit !== null && decimal(given.areaIn2).lte(limit.value);
    }) ?? null
  );
}

/** Area used as a per cent of the whole inside area of the raceway. */
export function fillPercent(given: {
  readonly id: string;
  readonly area: Worked;
  readonly raceway: string;
  readonly tradeSize: TradeSize;
  readonly edition: Edition;
}): Worked | null {
  const whole = readCell(RACEWAY, `${given.raceway} ${given.tradeSize}`, "area", given.edition);
  if (whole === null) return null;
  const value = decimal(given.area.value).div(whole.value).times(100);
  return worked({
    id: given.id,
    label: "Raceway fill",
    value: value.toSignificantDigits(8).toFixed(),
    unit: "%",
    expression: `${print(given.area.value, 4)} in² / ${whole.value} in² × 100`,
    inputs: [given.area.id],
    cells: [whole],
    edition: given.edition,
  });
}
