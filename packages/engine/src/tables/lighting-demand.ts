import type { CodeTable } from "./code-table.js";

/** A row is named by the VA at which its part begins. */
export const LIGHTING_DEMAND = {
  id: "lighting-demand",
  title: "Demand of general lighting in dwelling units, per cent of the part; a row is named by the VA at which the part begins",
  sections: { "2017": "Table 220.42", "2020": "Table 220.42", "2023": "Table 220.45", "2026": "Table 120.45" },
  columns: ["percent"],
  rows: { "0": ["100"], "3000": ["35"], "120000": ["25"] },
  groups: [{ standing: "published" }],
  sources: [
    {
      where: "https://electricalcode.net/2024/03/13/article-220-branch-circuit-feeder-and-service-load-calculations-part-3-220-44",
      confirms: "all three rows",
    },
    {
      where: "https://ecmweb.com/national-electrical-code/code-basics/article/20885382/clearing-up-multi-family-dwelling-unit-calculations",
      confirms: "first 3,000 VA whole, the next 117,000 at 35 %, the rest at 25 %",
    },
    { where: "https://flylib.com/books/en/2.419.1/example_no_d1_a_one_family_dwelling.html", confirms: "first 3,000 VA whole, then 35 %" },
  ],
} as const satisfies CodeTable;
