import { cite } from "../basis/citation.js";
import { type Edition, everyEdition } from "../basis/edition.js";
import { Decimal, decimal, print } from "../quantity.js";
import { COUNT_ADJUSTMENT } from "../tables/adjustment.js";
import { AMBIENT_CORRECTION } from "../tables/ambient.js";
import { AMPACITY } from "../tables/ampacity.js";
import { type Cable, isCable, withinCable } from "../tables/cable.js";
import { readCell, rowFrom, rowUpTo } from "../tables/code-table.js";
import { INSULATION_RATING, type Marking } from "../tables/insulation-rating.js";
import { printSize, type Size } from "../tables/size.js";
import { type Cell, type Worked, worked } from "../worked.js";

export type Insulation = Marking | Cable;
export type Material = "copper" | "aluminum";
type Column = 60 | 75 | 90;

/** NM-B and UF-B correct from 90 and 60 °C. 334.80, 340.80. */
const CABLE_COLUMN: Readonly<Record<Cable, Column>> = { "NM-B": 90, "UF-B": 60 };
const TERMINALS = { sections: everyEdition("110.14(C)(1)"), standing: "published" } as const;
const CABLE_LIMIT = {
  "NM-B": { sections: everyEdition("334.80"), standing: "published" },
  "UF-B": { sections: everyEdition("340.80"), standing: "published" },
} as const;

export interface AmpacityGiven {
  readonly id: string;
  readonly size: Size;
  readonly material: Material;
  readonly insulation: Insulation;
  readonly ambientC: number;
  readonly currentCarrying: number;
  readonly terminalC: 60 | 75;
  /** The conductors lie in a wet place: XHHW and THHW then count as 75 °C. Dry when left out. */
  readonly wet?: boolean;
  readonly edition: Edition;
}

export interface Ampacity {
  readonly corrected: Worked;
  readonly terminal: Worked;
  readonly allowed: Worked;
}

/** The insulation's own temperature column. One that is not for wet places keeps its dry column there: that it lies there is another finding. */
function insulationColumn(insulation: Insulation, wet: boolean, edition: Edition): Column {
  if (isCable(insulation)) return CABLE_COLUMN[insulation];
  const cell = (wet ? readCell(INSULATION_RATING, insulation, "wet", edition) : null) ?? readCell(INSULATION_RATING, insulation, "dry", edition);
  if (cell === null) throw new RangeError(`no rating of ${insulation}`);
  return Number(cell.value) as Column;
}

function ambientCell(column: Column, ambientC: number, edition: Edition): Cell | null {
  const row = rowUpTo(AMBIENT_CORRECTION, ambientC);
  return row === null ? null : readCell(AMBIENT_CORRECTION, row, `f${column}`, edition);
}

function adjustmentCell(count: number, edition: Edition): Cell | null {
  const row = rowFrom(COUNT_ADJUSTMENT, count);
  return row === null ? null : readCell(COUNT_ADJUSTMENT, row, "percent", edition);
}

interface AmpacityCells {
  readonly base: Cell;
  readonly ambient: Cell;
  readonly terminal: Cell;
  readonly adjustment: Cell | null;
  readonly terminalC: Column;
}

/** The cells that decide the ampacity of each size in one place; null for a size that has none there. */
export function ampacityCells(place: Omit<AmpacityGiven, "size">): (size: Size) => AmpacityCells | null {
  const { material, insulation, edition } = place;
  // NM-B and UF-B stay at 60 °C whatever they end on, 334.80 and 340.80.
  const terminalC = isCable(insulation) ? 60 : place.terminalC;
  const metal = material === "copper" ? "cu" : "al";
  const column = insulationColumn(insulation, place.wet ?? false, edition);
  const ambient = ambientCell(column, place.ambientC, edition);
  const adjustment = adjustmentCell(place.currentCarrying, edition);
  return (size) => {
    if (ambient === null || withinCable(insulation, size) !== size) return null;
    const base = readCell(AMPACITY, size, `${metal}${column}`, edition);
    const terminal = readCell(AMPACITY, size, `${metal}${terminalC}`, edition);
    return base === null || terminal === null ? null : { base, ambient, terminal, adjustment, terminalC };
  };
}

const percentOf = ({ adjustment }: AmpacityCells) => adjustment?.value ?? "100";
const correctedOf = (cells: AmpacityCells) => decimal(cells.base.value).times(cells.ambient.value).times(percentOf(cells)).div(100);

/** The amperes of {@link ampacity} alone, for trying sizes. */
export function ampacityAmperes(cells: AmpacityCells): { readonly terminal: Decimal; readonly allowed: Decimal } {
  const terminal = decimal(cells.terminal.value);
  return { terminal, allowed: Decimal.min(correctedOf(cells), terminal) };
}

/** The same in doubles: near enough to pass over what is plainly too small. */
export function nearAmperes(cells: AmpacityCells): { readonly terminal: number; readonly allowed: number } {
  const terminal = Number(cells.terminal.value);
  return { terminal, allowed: Math.min(terminal, (Number(cells.base.value) * Number(cells.ambient.value) * Number(percentOf(cells))) / 100) };
}

/**
 * Ampacity of one size in one place, in amperes: the insulation's column corrected for ambient (°C) and adjusted for the
 * count of current-carrying conductors; the terminal column by itself; and the lesser of the two, at 60 °C in a cable whatever it ends on.
 * Returns null where there is no ampacity (blank cell, too hot for the insulation, larger than the cable is made). 310.15, 310.16, 110.14(C).
 */
export function ampacity(given: AmpacityGiven): Ampacity | null {
  const { id, size, material, insulation, edition } = given;
  const read = ampacityCells(given)(size);
  if (read === null) return null;
  const { base, ambient, terminal: terminalCell, adjustment, terminalC } = read;
  const percent = percentOf(read);
  const value = correctedOf(read);
  const corrected = worked({
    id: `${id}.corrected`,
    label: `${printSize(size)} ${material} ${insulation}, corrected and adjusted ampacity`,
    value: value.toFixed(),
    unit: "A",
    expression: `${base.value} A × ${ambient.value} × ${percent} %`,
    cells: [base, ambient, ...(adjustment ? [adjustment] : [])],
    edition,
  });
  const terminal = worked({
    id: `${id}.terminal`,
    label: `${printSize(size)} at ${terminalC} °C terminals`,
    value: terminalCell.value,
    unit: "A",
    expression: `${terminalCell.value} A`,
    cells: [terminalCell],
    citations: [cite(TERMINALS, edition)!],
    edition,
  });
  const allowed = worked({
    id: `${id}.allowed`,
    label: `${printSize(size)} ${insulation}, ampacity allowed`,
    value: Decimal.min(corrected.value, terminal.value).toFixed(),
    unit: "A",
    expression: `least of ${print(corrected.value)} A, ${print(terminal.value)} A`,
    inputs: [corrected.id, terminal.id],
    // The terminal line of a cable is already its 60 °C limit.
    citations: isCable(insulation) ? [cite(CABLE_LIMIT[insulation], edition)!] : [cite(TERMINALS, edition)!],
    edition,
  });
  return { corrected, terminal, allowed };
}
