import type { CodeTable } from "./code-table.js";

/** A row is named by the metal and size of the supply conductors; `upTo` is the row's top in circular mils, inclusive, blank in the last. */
export const ELECTRODE_CONDUCTOR = {
  id: "electrode-conductor",
  title: "Grounding electrode conductor by the largest ungrounded supply conductor or the equivalent area of parallel ones",
  sections: { "2017": "Table 250.66", "2020": "Table 250.66", "2023": "Table 250.66", "2026": "Table 250.66" },
  columns: ["upTo", "copper", "aluminum"],
  rows: {
    "copper 2 or smaller": ["66360", "8", "6"],
    "copper 1 or 1/0": ["105600", "6", "4"],
    "copper 2/0 or 3/0": ["167800", "4", "2"],
    "copper over 3/0 to 350": ["350000", "2", "1/0"],
    "copper over 350 to 600": ["600000", "1/0", "3/0"],
    "copper over 600 to 1100": ["1100000", "2/0", "4/0"],
    "copper over 1100": [null, "3/0", "250"],
    "aluminum 1/0 or smaller": ["105600", "8", "6"],
    "aluminum 2/0 or 3/0": ["167800", "6", "4"],
    "aluminum 4/0 or 250": ["250000", "4", "2"],
    "aluminum over 250 to 500": ["500000", "2", "1/0"],
    "aluminum over 500 to 900": ["900000", "1/0", "3/0"],
    "aluminum over 900 to 1750": ["1750000", "2/0", "4/0"],
    "aluminum over 1750": [null, "3/0", "250"],
  },
  groups: [{ standing: "published" }],
  sources: [
    { where: "https://www.cooper-electric.com/p/service-equipment-grounding-table", confirms: "all rows" },
    { where: "https://www.voltagelab.com/?p=10400", confirms: "all rows" },
    {
      where: "https://expertce.com/learn-articles/nec-250-66-grounding-electrode-conductor",
      confirms: "500 kcmil copper, 1/0 AWG; the limits for rod and concrete-encased electrode",
    },
    { where: "Chapter 9 Table 8", confirms: "circular mils of the AWG tops" },
  ],
  notes: ["2026 edition not compared."],
} as const satisfies CodeTable;

export const SUPPLY_BONDING = {
  id: "supply-bonding",
  title: "Grounded conductor, main bonding jumper, system bonding jumper and supply-side bonding jumper",
  sections: { "2017": "Table 250.102(C)(1)", "2020": "Table 250.102(C)(1)", "2023": "Table 250.102(C)(1)", "2026": "Table 250.102(C)(1)" },
  columns: ["upTo", "copper", "aluminum"],
  rows: {
    "copper 2 or smaller": ["66360", "8", "6"],
    "copper 1 or 1/0": ["105600", "6", "4"],
    "copper 2/0 or 3/0": ["167800", "4", "2"],
    "copper over 3/0 to 350": ["350000", "2", "1/0"],
    "copper over 350 to 600": ["600000", "1/0", "3/0"],
    "copper over 600 to 1100": ["1100000", "2/0", "4/0"],
    "copper over 1100": [null, null, null],
    "aluminum 1/0 or smaller": ["105600", "8", "6"],
    "aluminum 2/0 or 3/0": ["167800", "6", "4"],
    "aluminum 4/0 or 250": ["250000", "4", "2"],
    "aluminum over 250 to 500": ["500000", "2", "1/0"],
    "aluminum over 500 to 900": ["900000", "1/0", "3/0"],
    "aluminum over 900 to 1750": ["1750000", "2/0", "4/0"],
    "aluminum over 1750": [null, null, null],
  },
  groups: [{ standing: "published" }],
  sources: [
    {
      where: "https://www.thebuildingcodeforum.com/forum/threads/sizing-a-supply-side-or-main-bond-with-parallel-conductors.26483",
      confirms: "250 kcmil copper, 2 AWG; 750 kcmil copper, 2/0 AWG; 2 × 3/0 copper, 2 AWG copper or 1/0 aluminum",
    },
    {
      where: "https://forums.mikeholt.com/threads/electrician.27781",
      confirms: "12.5 % above 1100 kcmil copper and 1750 kcmil aluminum; the other rows as Table 250.66",
    },
  ],
  notes: ["Above the last row: not less than 12.5 % of the area of the largest set of ungrounded conductors.", "2026 edition not compared."],
} as const satisfies CodeTable;
