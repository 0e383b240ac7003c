import type { CodeTable } from "./code-table.js";

export const AMBIENT_CORRECTION = {
  id: "ambient-correction",
  title: "Ambient temperature correction factors, 30 °C base; a row is named by the upper end of its band in °C",
  sections: { "2017": "Table 310.15(B)(2)(a)", "2020": "Table 310.15(B)(1)", "2023": "Table 310.15(B)(1)(1)", "2026": "Table 310.15(B)(1)(1)" },
  columns: ["from", "f60", "f75", "f90"],
  rows: {
    "10": [null, "1.29", "1.2", "1.15"],
    "15": ["11", "1.22", "1.15", "1.12"],
    "20": ["16", "1.15", "1.11", "1.08"],
    "25": ["21", "1.08", "1.05", "1.04"],
    "30": ["26", "1", "1", "1"],
    "35": ["31", "0.91", "0.94", "0.96"],
    "40": ["36", "0.82", "0.88", "0.91"],
    "45": ["41", "0.71", "0.82", "0.87"],
    "50": ["46", "0.58", "0.75", "0.82"],
    "55": ["51", "0.41", "0.67", "0.76"],
    "60": ["56", null, "0.58", "0.71"],
    "65": ["61", null, "0.47", "0.65"],
    "70": ["66", null, "0.33", "0.58"],
    "75": ["71", null, null, "0.5"],
    "80": ["76", null, null, "0.41"],
    "85": ["81", null, null, "0.29"],
  },
  groups: [{ standing: "published" }],
  sources: [
    {
      where: "https://up.codes/s/correction-factor-for-ambient-temperatures",
      confirms: "IRC 2021 mirror Table E3705.2 [310.15(B)(1)]: every band and value incl. F bands",
    },
    {
      where: "http://online.flipbuilder.com/mewf/mima/files/basic-html/page742.html",
      confirms: "IRC 2018 Table E3705.2 [310.15(B)(2)(a)]: same values down to 66-70 C (excerpt end)",
    },
  ],
  notes: ["The table number in 2023 and 2026 is from memory."],
} as const satisfies CodeTable;
