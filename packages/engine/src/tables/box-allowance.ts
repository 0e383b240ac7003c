import type { CodeTable } from "./code-table.js";

export const BOX_ALLOWANCE = {
  id: "box-allowance",
  title: "Volume allowance for one conductor, in³",
  sections: { "2017": "Table 314.16(B)", "2020": "Table 314.16(B)", "2023": "Table 314.16(B)", "2026": "Table 314.16(B)" },
  columns: ["volume"],
  rows: { "18": ["1.5"], "16": ["1.75"], "14": ["2"], "12": ["2.25"], "10": ["2.5"], "8": ["3"], "6": ["5"] },
  groups: [{ rows: ["8", "6"], standing: "memory" }, { rows: ["16"], standing: "one-source" }, { standing: "published" }],
  sources: [{ where: "several trade articles and exam guides", confirms: "18, 14, 12 and 10 AWG" }],
} as const satisfies CodeTable;

/** Usual box volumes in in³, for naming the next better box. Stamped volume governs where it is larger. */
export const USUAL_BOX_VOLUMES = [18, 21, 30.3, 42, 50, 64, 80, 100, 144, 192, 288] as const;
