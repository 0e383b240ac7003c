import type { CodeTable } from "./code-table.js";

export const GROUNDING_CONDUCTOR = {
  id: "equipment-grounding",
  title: "Minimum equipment grounding conductor; a row is named by the largest overcurrent device it serves",
  sections: { "2017": "Table 250.122", "2020": "Table 250.122", "2023": "Table 250.122", "2026": "Table 250.122" },
  columns: ["copper", "aluminum"],
  rows: {
    "15": ["14", "12"],
    "20": ["12", "10"],
    "60": ["10", "8"],
    "100": ["8", "6"],
    "200": ["6", "4"],
    "300": ["4", "2"],
    "400": ["3", "1"],
    "500": ["2", "1/0"],
    "600": ["1", "2/0"],
    "800": ["1/0", "3/0"],
    "1000": ["2/0", "4/0"],
    "1200": ["3/0", "250"],
  },
  groups: [{ standing: "published" }],
  sources: [
    { where: "https://brunsengineering.com/nec-table-250-122/", confirms: "all 19 rows Cu and Al" },
    { where: "https://mikeholt.com/newsletters.php?letterID=212", confirms: "Cu 15-1200 A" },
    { where: "https://www.scribd.com/document/768710860/", confirms: "old Table 250-95: Cu all rows, Al to 3000 A same" },
  ],
} as const satisfies CodeTable;
