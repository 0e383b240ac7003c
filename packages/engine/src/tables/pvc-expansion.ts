import type { CodeTable } from "./code-table.js";

const PRINTED =
  "0.2 0.41 0.61 0.81 1.01 1.22 1.42 1.62 1.83 2.03 2.23 2.43 2.64 2.84 3.04 3.24 3.45 3.65 3.85 4.06 4.26 4.46 4.66 4.87 5.07 5.27 5.48 5.68 5.88 6.08 6.29 6.49 6.69 6.9 7.1 7.3 7.5 7.71 7.91 8.11";

/** Change in length of 100 ft of PVC conduit, in; a row is the temperature change in °F, 5 to 200. */
export const PVC_EXPANSION = {
  id: "pvc-expansion",
  title: "Change in length of rigid PVC conduit, in per 100 ft; a row is the change of temperature in °F",
  sections: { "2017": "Table 352.44", "2020": "Table 352.44", "2023": "Table 352.44(A)", "2026": "Table 352.44(A)" },
  columns: ["per100ft"],
  rows: Object.fromEntries(PRINTED.split(" ").map((inches, i) => [String((i + 1) * 5), [inches]])),
  groups: [{ rows: ["85", "90", "95", "100", "180", "185", "190", "195", "200"], standing: "memory" }, { standing: "one-source" }],
  sources: [
    {
      where: "http://solar365.com/green-homes/national-electric-code-2008/rigid-polyvinyl-chloride-conduit/page/0/2?page=0,2",
      confirms: "rows 5-80 and 105-175 °F; a fitting from 1/4 in up",
    },
    {
      where: "https://manualmachine.com/carlon/expansionjoints/1458096-user-manual",
      confirms: "coefficient 3.38 × 10⁻⁵; over 4 in per 100 ft for 100 °F; a fitting from 1/4 in up",
    },
    { where: "formula", confirms: "every row is 3.38 × 10⁻⁵ × 1200 in × the row, to two places" },
  ],
} as const satisfies CodeTable<"per100ft">;
