import type { CodeTable } from "./code-table.js";

/** Compact-stranded conductors (most building aluminum from 8 AWG up): smaller than Chapter 9 Table 5 has them. */
export const COMPACT_CONDUCTOR = {
  id: "compact-conductor",
  title: 'Dimensions of compact-stranded insulated conductors; a row is "TYPE size"',
  sections: { "2017": "Chapter 9 Table 5A", "2020": "Chapter 9 Table 5A", "2023": "Chapter 9 Table 5A", "2026": "Chapter 9 Table 5A" },
  columns: ["diameter", "area"],
  rows: {
    "XHHW-2 8": ["0.224", "0.0394"],
    "XHHW-2 6": ["0.26", "0.053"],
    "XHHW-2 4": ["0.305", "0.073"],
    "XHHW-2 2": ["0.36", "0.1017"],
    "XHHW-2 1": ["0.415", "0.1352"],
    "XHHW-2 1/0": ["0.45", "0.159"],
    "XHHW-2 2/0": ["0.49", "0.1885"],
    "XHHW-2 3/0": ["0.54", "0.229"],
    "XHHW-2 4/0": ["0.59", "0.2733"],
    "XHHW-2 250": ["0.66", "0.3421"],
    "XHHW-2 300": ["0.715", "0.4015"],
    "XHHW-2 350": ["0.76", "0.4536"],
    "XHHW-2 400": ["0.8", "0.5026"],
    "XHHW-2 500": ["0.88", "0.6082"],
    "THHN 6": ["0.24", "0.0452"],
    "THHN 4": ["0.305", "0.073"],
    "THHN 2": ["0.36", "0.1017"],
    "THHN 1": ["0.415", "0.1352"],
    "THHN 1/0": ["0.45", "0.159"],
    "THHN 2/0": ["0.495", "0.1924"],
    "THHN 3/0": ["0.54", "0.229"],
    "THHN 4/0": ["0.595", "0.278"],
    "THHN 250": ["0.67", "0.3525"],
  },
  groups: [{ standing: "memory" }],
  sources: [
    {
      where: "http://www.nassauelectrical.com/products/aluminium-building-wire/xhhw-2-aluminum-conductor",
      confirms: "consistency only: a maker's nominal diameters of compact XHHW-2 from 6 AWG to 4/0 lie within 0.005 in of these",
    },
    { where: "formula", confirms: "every area is πd²/4 of its diameter" },
  ],
} as const satisfies CodeTable;

/** First part of a row name by the marking on the conductor. */
export const COMPACT_ROWS: Readonly<Record<string, string>> = { XHHW: "XHHW-2", "XHHW-2": "XHHW-2", THHN: "THHN", "THWN-2": "THHN" };
