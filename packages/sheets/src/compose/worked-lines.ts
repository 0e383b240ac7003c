import { type Citation, print, printCitation, printSize, SIZES, type Size, type Worked } from "@branchwork/engine";
import type { CalcLine, CalcLines } from "./packet.js";

const UNIT_NAMES: Record<Worked["unit"], string> = {
  A: "A",
  V: "V",
  VA: "VA",
  W: "W",
  ohm: "Ω",
  ft: "ft",
  in: "in",
  in2: "in²",
  in3: "in³",
  cmil: "cmil",
  degC: "°C",
  degrees: "°",
  "%": "%",
  kA: "kA",
  count: "",
  factor: "",
  "AWG/kcmil": "",
  text: "",
};
const PLACES: Partial<Record<Worked["unit"], number>> = { ohm: 6, in2: 4, factor: 5 };
const NUMERAL = /^-?\d+(\.\d+)?$/;

/** A worked value with its unit, thousands grouped: "12,000 VA", "6 AWG", "0.1041 in²". */
export function valueWithUnit({ value, unit }: Pick<Worked, "value" | "unit">): string {
  if (unit === "AWG/kcmil") return isSize(value) ? printSize(value) : value;
  const numeral = NUMERAL.test(value) ? print(value, PLACES[unit] ?? 2) : value;
  return `${numeral} ${UNIT_NAMES[unit]}`.trim();
}

function isSize(value: string): value is Size {
  return (SIZES as readonly string[]).includes(value);
}

/** One calculation line with its citations, its table cells and the rounding used. */
export function calcLine(worked: Worked): CalcLine {
  const cells = worked.cells.map((cell) => `${cell.table}, row ${cell.row}, column ${cell.column}: ${cell.value}. ${printCitation(cell.citation)}`);
  const ofCells = new Set(worked.cells.map((cell) => printCitation(cell.citation)));
  const citations = worked.citations.map(printCitation).filter((c) => !ofCells.has(c));
  const rounding = worked.rounding === null ? [] : [`rounded: ${worked.rounding}`];
  return { label: worked.label, expression: worked.expression, result: valueWithUnit(worked), sources: [...citations, ...cells, ...rounding] };
}

/** Calculation lines in order, a value that comes up twice printed once. */
export function calcLines(caption: string, steps: readonly Worked[]): CalcLines {
  const seen = new Set<string>();
  const lines = steps
    .map((step) => calcLine(step))
    .filter((line) => {
      const key = JSON.stringify(line);
      if (seen.has(key)) return false;
      seen.add(key);
      return true;
    });
  return { kind: "calc", caption, lines };
}

/** The citation of a finding, or a dash where the edition has no such rule. */
export function citationOrDash(citation: Citation | null): string {
  return citation === null ? "—" : printCitation(citation);
}
