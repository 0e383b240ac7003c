import type { CodeTable } from "./code-table.js";

export const COUNT_ADJUSTMENT = {
  id: "count-adjustment",
  title: "Adjustment for more than three current-carrying conductors; a row is named by the least count of its band",
  sections: { "2017": "Table 310.15(B)(3)(a)", "2020": "Table 310.15(C)(1)", "2023": "Table 310.15(C)(1)", "2026": "Table 310.15(C)(1)" },
  columns: ["to", "percent"],
  rows: {
    "4": ["6", "80"],
    "7": ["9", "70"],
    "10": ["20", "50"],
    "21": ["30", "45"],
    "31": ["40", "40"],
    "41": [null, "35"],
  },
  groups: [{ standing: "published" }],
  sources: [
    { where: "https://www.buildmyowncabin.com/nec/nec2014_table310.15(b)(3)(a).html", confirms: "all six rows (2014 table)" },
    { where: "https://www.voltagelab.com/table-310-15b3a-adjustment-factors", confirms: "all six rows; counts spares; bundling over 24 in" },
    { where: "http://www.ecmweb.com/qampa/code-qa-112", confirms: "4 conductors = 80 %; 24 in rule; each parallel conductor counts" },
  ],
} as const satisfies CodeTable;
