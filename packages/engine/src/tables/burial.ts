import type { CodeTable } from "./code-table.js";

export const BURIAL_COVER = {
  id: "burial-cover",
  title: "Minimum cover in inches",
  sections: { "2017": "Table 300.5", "2020": "Table 300.5", "2023": "Table 300.5(A)", "2026": "Table 300.5(A)" },
  columns: ["directBurial", "rmcImc", "nonmetallicRaceway", "residential120V20AGfci", "lowVoltage"],
  rows: {
    general: ["24", "6", "18", "12", "6"],
    "under-concrete-2in": ["18", "6", "12", "6", "6"],
    "under-building": ["0", "0", "0", "0", "0"],
    "under-slab-4in": ["18", "4", "4", "6", "6"],
    "under-street": ["24", "24", "24", "24", "24"],
    "under-dwelling-driveway": ["18", "18", "18", "12", "18"],
    airport: ["18", "18", "18", "18", "18"],
  },
  groups: [{ rows: ["general"], standing: "published" }, { standing: "one-source" }],
  sources: [
    { where: "https://up.codes/s/underground-installations", confirms: "state mirror of Table 300.5: all 35 cells and footnotes a, b" },
    {
      where: "https://www.electricallicenserenewal.com/Electrical-Continuing-Education-Courses/NEC-Content.php?sectionID=272",
      confirms: "column 5 = 6 in except under concrete/building; footnotes a and b new in 2017; cover definition",
    },
    { where: "http://ecmweb.com/print/nec/code-qa-3", confirms: "PVC 18 in" },
    { where: "https://forums.mikeholt.com/threads/burial-depth-residential.2568760/page-2", confirms: "row 1: 24 / 6 / 12 in" },
  ],
  notes: ["Under a 4 in slab columns 4 and 5 allow 4 in inside a raceway; the larger figure is entered."],
} as const satisfies CodeTable;
