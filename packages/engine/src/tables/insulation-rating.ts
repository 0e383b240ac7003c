import type { CodeTable } from "./code-table.js";

/** Insulation by the marking on the conductor, and the column of the ampacity table it may be corrected from. Blank: not for wet places. */
export const INSULATION_RATING = {
  id: "insulation-rating",
  title: "Temperature rating of insulation, °C, in dry and damp and in wet places",
  sections: { "2017": "Table 310.104(A)", "2020": "Table 310.4(A)", "2023": "Table 310.4(1)", "2026": "Table 310.4(1)" },
  columns: ["dry", "wet"],
  rows: {
    "THWN-2": ["90", "90"],
    THHN: ["90", null],
    "XHHW-2": ["90", "90"],
    THW: ["75", "75"],
    THWN: ["75", "75"],
    "THW-2": ["90", "90"],
    THHW: ["90", "75"],
    TW: ["60", "60"],
    XHHW: ["90", "75"],
    XHH: ["90", null],
    RHH: ["90", null],
    RHW: ["75", "75"],
    "RHW-2": ["90", "90"],
    "RHH without covering": ["90", null],
    "RHW without covering": ["75", "75"],
    "RHW-2 without covering": ["90", "90"],
  },
  groups: [{ standing: "memory" }],
  sources: [
    {
      where: "Table 310.16 heads of columns",
      confirms: "consistency only: TW under 60 °C; THW, THWN, RHW, XHHW under 75 °C; THHN, THW-2, THWN-2, RHW-2, XHHW-2 under 90 °C",
    },
  ],
} as const satisfies CodeTable;

export const INSULATIONS = [
  "THWN-2",
  "THHN",
  "XHHW-2",
  "THW",
  "THWN",
  "THW-2",
  "THHW",
  "TW",
  "XHHW",
  "XHH",
  "RHH",
  "RHW",
  "RHW-2",
  "RHH without covering",
  "RHW without covering",
  "RHW-2 without covering",
] as const satisfies readonly (keyof typeof INSULATION_RATING.rows)[];
export type Marking = (typeof INSULATIONS)[number];
type Column = 60 | 75 | 90;

/** The column a marking is corrected from; null in a wet place for one that is dry only. */
export function ratingOf(insulation: Marking, wet: boolean): Column | null {
  const [dry, inWet] = INSULATION_RATING.rows[insulation];
  const found = wet ? inWet : dry;
  return found === null ? null : (Number(found) as Column);
}
