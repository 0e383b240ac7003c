import type { CodeTable } from "./code-table.js";

export const METAL_BOX = {
  id: "metal-box",
  title: "Least volume of a standard metal box, in³; a stamped volume governs where it is larger",
  sections: { "2017": "Table 314.16(A)", "2020": "Table 314.16(A)", "2023": "Table 314.16(A)", "2026": "Table 314.16(A)" },
  columns: ["volume"],
  rows: {
    "4 × 1-1/4 round/octagonal": ["12.5"],
    "4 × 1-1/2 round/octagonal": ["15.5"],
    "4 × 2-1/8 round/octagonal": ["21.5"],
    "4 × 1-1/4 square": ["18"],
    "4 × 1-1/2 square": ["21"],
    "4 × 2-1/8 square": ["30.3"],
    "4-11/16 × 1-1/4 square": ["25.5"],
    "4-11/16 × 1-1/2 square": ["29.5"],
    "4-11/16 × 2-1/8 square": ["42"],
    "3 × 2 × 1-1/2 device": ["7.5"],
    "3 × 2 × 2 device": ["10"],
    "3 × 2 × 2-1/4 device": ["10.5"],
    "3 × 2 × 2-1/2 device": ["12.5"],
    "3 × 2 × 2-3/4 device": ["14"],
    "3 × 2 × 3-1/2 device": ["18"],
    "4 × 2-1/8 × 1-1/2 device": ["10.3"],
    "4 × 2-1/8 × 1-7/8 device": ["13"],
    "4 × 2-1/8 × 2-1/8 device": ["14.5"],
    "3-3/4 × 2 × 2-1/2 masonry, a gang": ["14"],
    "3-3/4 × 2 × 3-1/2 masonry, a gang": ["21"],
    "FS, 1-3/4 deep, single cover, a gang": ["13.5"],
    "FD, 2-3/8 deep, single cover, a gang": ["18"],
    "FS, 1-3/4 deep, multiple cover, a gang": ["18"],
    "FD, 2-3/8 deep, multiple cover, a gang": ["24"],
  },
  groups: [
    {
      rows: ["4 × 1-1/2 round/octagonal", "4 × 1-1/2 square", "4 × 2-1/8 square", "3 × 2 × 1-1/2 device", "3 × 2 × 2 device", "3 × 2 × 2-1/2 device"],
      standing: "published",
    },
    {
      rows: [
        "4 × 1-1/4 round/octagonal",
        "4 × 2-1/8 round/octagonal",
        "4 × 1-1/4 square",
        "4-11/16 × 1-1/4 square",
        "4-11/16 × 1-1/2 square",
        "4-11/16 × 2-1/8 square",
        "3 × 2 × 2-1/4 device",
      ],
      standing: "one-source",
    },
    { standing: "memory" },
  ],
  sources: [
    {
      where: "http://www.synthmind.com/Electrical_Box_Sizing_Guide.htm",
      confirms: "round, square and 3 × 2 device boxes to 2-1/2 deep, with conductor counts (its 4 × 1-1/4 octagon count for 8 AWG is misprinted)",
    },
    { where: "http://forums.mikeholt.com/showthread.php?t=62057", confirms: "4 × 1-1/2 square = 21 in³" },
    { where: "https://jbjsupply.com/product-p/hub-911-4.htm", confirms: "4 × 2-1/8 square = 30.3 in³" },
    { where: "Eaton Crouse-Hinds, its 4 in octagon box 1-1/2 in deep, as distributors list it", confirms: "4 × 1-1/2 octagon = 15.5 in³" },
    { where: "https://www.ncertpoint.com/2022/01/how-wide-is-single-gang-box.html", confirms: "3 × 2 device boxes: 7.5, 10, 12.5 in³" },
    {
      where: "a transcription of the whole table in a public code repository",
      confirms: "every volume (it writes the masonry and FS/FD dimensions otherwise, so those rows stay marked memory)",
    },
  ],
} as const satisfies CodeTable;

export type MetalBox = keyof typeof METAL_BOX.rows;
