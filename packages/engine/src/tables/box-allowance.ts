import type { CodeTable } from "./code-table.js";

export const BOX_ALLOWANCE = {
  id: "box-allowance",
  title: "Volume allowance for one conductor, in³",
  sections: { "2017": "Table 314.16(B)", "2020": "Table 314.16(B)", "2023": "Table 314.16(B)", "2026": "Table 314.16(B)" },
  columns: ["volume"],
  rows: { "18": ["1.5"], "16": ["1.75"], "14": ["2"], "12": ["2.25"], "10": ["2.5"], "8": ["3"], "6": ["5"] },
  groups: [{ rows: ["8", "6", "16"], standing: "memory" }, { rows: ["18", "14", "10"], standing: "one-source" }, { standing: "published" }],
  sources: [
    {
      where: "https://stallcupeducation.learnworlds.com/blog/sizing-octagon-box-different-size-conductors-article",
      confirms: "12 AWG 2.25 in³, 18 AWG 1.5 in³",
    },
    {
      where: "https://www.ecmweb.com/national-electrical-code/code-basics/article/20904411/nec-requirements-for-sizing-outlet-boxes",
      confirms: "nine 12 AWG in a box of 21 in³",
    },
    {
      where: "a public transcription of box volumes and conductor counts (synthmind.com/Electrical_Box_Sizing_Guide.htm)",
      confirms: "14 and 10 AWG, by its counts",
    },
  ],
} as const satisfies CodeTable;

/** Usual box volumes in in³, for naming the next better box. Stamped volume governs where it is larger. */
export const USUAL_BOX_VOLUMES = [18, 21, 30.3, 42, 50, 64, 80, 100, 144, 192, 288] as const;
