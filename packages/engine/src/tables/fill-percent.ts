import type { CodeTable } from "./code-table.js";

export const FILL_PERCENT = {
  id: "fill-percent",
  title: "Per cent of raceway area for conductors",
  sections: { "2017": "Chapter 9 Table 1", "2020": "Chapter 9 Table 1", "2023": "Chapter 9 Table 1", "2026": "Chapter 9 Table 1" },
  columns: ["percent"],
  rows: {
    "1": ["53"],
    "2": ["31"],
    "over 2": ["40"],
    nipple: ["60"],
  },
  groups: [{ standing: "published" }],
  sources: [
    { where: "https://vdocument.in/chapter-9-tablespdf.html", confirms: "2011 Handbook pages: 53/31/40" },
    {
      where: "https://gitea.zanemeyers.com/ZaneMeyers/zmVault/raw/branch/main/nfpa-70_ch09.md",
      confirms:
        "53/31/40; Note 3 EGC counted at actual size; Note 4 nipple 24 in 60 %; Note 5 actual dimensions for multiconductor cable; Note 7 round up at >= 0.8",
    },
    {
      where: "http://2.accessengineeringlibrary.com/browse/mcgraw-hills-national-electrical-code-2014-handbook-twenty-eighth-edition/c9780071834780ch09",
      confirms: "53 % one conductor, 31 % two",
    },
  ],
} as const satisfies CodeTable;
