import type { CodeTable } from "./code-table.js";

export const SMALL_CONDUCTOR = {
  id: "small-conductor",
  title: "Largest overcurrent device for small conductors, after correction and adjustment",
  sections: { "2017": "240.4(D)", "2020": "240.4(D)", "2023": "240.4(D)", "2026": "240.4(D)" },
  columns: ["copper", "aluminum"],
  rows: { "14": ["15", null], "12": ["20", "15"], "10": ["30", "25"] },
  groups: [{ standing: "published" }],
  sources: [
    { where: "http://www.encorewire.com/wp-content/uploads/wire_size_table.htm", confirms: "14, 12, 10 AWG copper 15, 20, 30 A; 12, 10 AWG aluminum 15, 25 A" },
    { where: "https://www.alanwire.com/resources/allowable-ampacities/", confirms: "the same five limits" },
  ],
} as const satisfies CodeTable;
