import type { CodeTable } from "./code-table.js";

export const BEND_RADIUS = {
  id: "bend-radius",
  title: "Least radius of a raceway bend to its centre line, in; a row is a trade size",
  sections: { "2017": "Chapter 9 Table 2", "2020": "Chapter 9 Table 2", "2023": "Chapter 9 Table 2", "2026": "Chapter 9 Table 2" },
  columns: ["oneShot", "other"],
  rows: {
    "1/2": ["4", "4"],
    "3/4": ["4.5", "5"],
    "1": ["5.75", "6"],
    "1-1/4": ["7.25", "8"],
    "1-1/2": ["8.25", "10"],
    "2": ["9.5", "12"],
    "2-1/2": ["10.5", "15"],
    "3": ["13", "18"],
    "3-1/2": ["15", "21"],
    "4": ["16", "24"],
    "5": ["24", "30"],
    "6": ["30", "36"],
  },
  groups: [{ standing: "one-source" }],
  sources: [
    { where: "https://vdocument.in/chapter-9-tablespdf.html", confirms: "2011 Handbook Table 2: all 12 rows, inches and mm, which agree with each other" },
  ],
} as const satisfies CodeTable;
