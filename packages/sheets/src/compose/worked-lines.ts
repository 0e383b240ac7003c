import { type Citation, type Edition, print, printCitation, printSize, SIZES, type Size, type Worked } from "@branchwork/engine";
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
  "lb/ft": "lb/ft",
  lbf: "lbf",
  "lbf/ft": "lbf/ft",
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

/** An id of small letters as words: "under-dwelling-driveway" is "under dwelling driveway". */
export function plainId(id: string): string {
  return /^[a-z0-9]+(-[a-z0-9]+)+$/.test(id) ? id.replaceAll("-", " ") : id;
}

const METALS: Record<string, string> = { cu: "copper ", al: "aluminum ", f: "" };

/** A table's column as the printed page heads it: "cu60" is "copper 60 °C", "nonmetallicRaceway" is "nonmetallic raceway". */
export function columnName(column: string): string {
  const [, metal = "", degrees] = /^(cu|al|f)(60|75|90)$/.exec(column) ?? [];
  if (degrees !== undefined) return `${METALS[metal]}${degrees} °C`;
  const [, percent] = /^area(\d+)$/.exec(column) ?? [];
  if (percent !== undefined) return `${percent} % of the area`;
  return /^[a-z]+([A-Z][a-z]+)*$/.test(column) ? column.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`) : column;
}

/** One calculation line with its citations, its table cells and the rounding used. */
export function calcLine(worked: Worked): CalcLine {
  const cells = worked.cells.map((cell) => `${printCitation(cell.citation)}, row ${plainId(cell.row)}, column ${columnName(cell.column)}: ${cell.value}`);
  const ofCells = new Set(worked.cells.map((cell) => printCitation(cell.citation)));
  const citations = worked.citations.map(printCitation).filter((c) => !ofCells.has(c));
  const rounding = worked.rounding === null ? [] : [`rounded: ${worked.rounding}`];
  return {
    id: worked.id,
    label: worked.label,
    expression: worked.expression,
    result: valueWithUnit(worked),
    sources: [...new Set([...citations, ...cells, ...rounding])],
  };
}

/** Calculation lines in order, a value that comes up twice printed once. */
export function calcLines(caption: string, steps: readonly Worked[]): CalcLines {
  const seen = new Set<string>();
  const lines = steps
    .map((step) => calcLine(step))
    .filter((line) => {
      const key = JSON.stringify({ ...line, id: "" });
      if (seen.has(key)) return false;
      seen.add(key);
      return true;
    });
  return { kind: "calc", caption, lines };
}

/** The head of a column of sections: the code is named once, there. */
export const sectionHead = (edition: Edition): string => `Section of NFPA 70-${edition}`;

/** A citation under {@link sectionHead}, or a dash where there is none: what is not of that code and edition keeps its document's name. */
export function sectionOrDash(citation: Citation | null, edition: Edition): string {
  return citation === null ? "—" : printCitation(citation).replace(`NFPA 70-${edition} `, "");
}
