import type { CodeTable } from "./code-table.js";

/** A row is named by the least number of dryers it serves; `less` is taken off for each dryer over `over`. */
export const DRYER_DEMAND = {
  id: "dryer-demand",
  title: "Demand of household electric clothes dryers, per cent; a row is named by the least number of dryers it serves",
  sections: { "2017": "Table 220.54", "2020": "Table 220.54", "2023": "Table 220.54", "2026": "Table 120.54" },
  columns: ["percent", "less", "over"],
  rows: {
    "1": ["100", null, null],
    "5": ["85", null, null],
    "6": ["75", null, null],
    "7": ["65", null, null],
    "8": ["60", null, null],
    "9": ["55", null, null],
    "10": ["50", null, null],
    "11": ["47", null, null],
    "12": ["47", "1", "11"],
    "24": ["35", "0.5", "23"],
    "43": ["25", null, null],
  },
  groups: [{ rows: ["1"], standing: "one-source" }, { rows: ["5", "9", "10", "11", "12"], standing: "one-source" }, { standing: "memory" }],
  sources: [
    { where: "https://flylib.com/books/en/2.419.1/example_no_d1_a_one_family_dwelling.html", confirms: "one dryer, whole" },
    { where: "https://forums.mikeholt.com/threads/multifamily-dwelling-220-61.32596", confirms: "5 dryers 85 %" },
    {
      where: "https://urban-wind.org/electricity-generation/what-is-the-minimum-allowable-watts-for-an-electric-dryer-in-a-dwelling-unit.html",
      confirms: "9, 10, 11 and 12 to 23 dryers",
    },
  ],
} as const satisfies CodeTable;
