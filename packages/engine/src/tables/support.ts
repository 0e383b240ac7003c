import type { PerEdition } from "../basis/edition.js";
import { everyEdition } from "../basis/edition.js";
import type { CodeTable } from "./code-table.js";

/** Securing: how near to a box or end, and how far apart. The sections are those of each method, below. */
export const SUPPORT = {
  id: "support",
  title: "Securing and supporting: ft from a box or end, and ft apart; a blank spacing is in the table of its own article",
  sections: everyEdition("the article of each method"),
  columns: ["within", "apart"],
  rows: {
    EMT: ["3", "10"],
    IMC: ["3", "10"],
    RMC: ["3", "10"],
    "PVC-40": ["3", null],
    "PVC-80": ["3", null],
    FMC: ["1", "4.5"],
    LFMC: ["1", "4.5"],
    "LFNC-A": ["1", "3"],
    "LFNC-B": ["1", "3"],
    ENT: ["3", "3"],
    "NM-B": ["1", "4.5"],
    "UF-B": ["1", "4.5"],
    MC: ["1", "6"],
  },
  groups: [{ rows: ["ENT", "UF-B", "MC", "LFNC-A"], standing: "memory" }, { rows: ["LFNC-B"], standing: "one-source" }, { standing: "published" }],
  sources: [
    {
      where: "https://www.tobycarveryshoecharms.com/how-often-should-conduit-be-supported.html",
      confirms: "EMT, IMC, RMC 10 ft; FMC 1 ft and 4.5 ft; NM 4.5 ft and 12 in",
    },
    { where: "https://www.engineeringtoolbox.com/amp/conduit-size-d_1738.html", confirms: "RMC 3 ft and 10 ft" },
    { where: "https://ecmweb.com/content/article/21178982/code-qa-nec-requirements-for-support-of-lfmc", confirms: "LFMC 1 ft and 4.5 ft" },
    { where: "http://ecmweb.com/nec/2014-national-electrical-code-changes?page=13", confirms: "FMC 1 ft and 4.5 ft" },
    { where: "https://mikeholt.com/newsletters.php?action=display&letterID=2363", confirms: "NM 12 in and 4.5 ft (2020)" },
    { where: "https://www.ecmweb.com/code-quiz-day/securing-and-supporting-pvc", confirms: "PVC 3 ft from a box" },
    { where: "http://handlebar-online.com/usefull-tips/how-do-you-measure-conduit-liquid-tightness", confirms: "LFNC 12 in and 3 ft" },
  ],
} as const satisfies CodeTable;

/** Where each method's rule stands. */
export const SUPPORT_SECTIONS: Readonly<Record<keyof typeof SUPPORT.rows, PerEdition<string>>> = {
  EMT: everyEdition("358.30"),
  IMC: everyEdition("342.30"),
  RMC: everyEdition("344.30"),
  "PVC-40": everyEdition("352.30"),
  "PVC-80": everyEdition("352.30"),
  FMC: everyEdition("348.30"),
  LFMC: everyEdition("350.30"),
  "LFNC-A": everyEdition("356.30"),
  "LFNC-B": everyEdition("356.30"),
  ENT: everyEdition("362.30"),
  "NM-B": everyEdition("334.30"),
  "UF-B": everyEdition("340.10, 334.30"),
  MC: everyEdition("330.30"),
};

export const PVC_SUPPORT = {
  id: "pvc-support",
  title: "Greatest distance between supports of rigid PVC conduit, ft; a row is a trade size",
  sections: { "2017": "Table 352.30", "2020": "Table 352.30", "2023": "Table 352.30(B)", "2026": "Table 352.30(B)" },
  columns: ["apart"],
  rows: {
    "1/2": ["3"],
    "3/4": ["3"],
    "1": ["3"],
    "1-1/4": ["5"],
    "1-1/2": ["5"],
    "2": ["5"],
    "2-1/2": ["6"],
    "3": ["6"],
    "3-1/2": ["7"],
    "4": ["7"],
    "5": ["7"],
    "6": ["8"],
  },
  groups: [
    { rows: ["1-1/4", "1-1/2", "2-1/2", "3", "3-1/2", "4", "5"], standing: "memory" },
    { rows: ["3/4", "1", "6"], standing: "one-source" },
    { standing: "published" },
  ],
  sources: [
    { where: "https://www.tobycarveryshoecharms.com/how-often-should-conduit-be-supported.html", confirms: "1/2-1: 3 ft, 2: 5 ft, 6: 8 ft" },
    { where: "http://www.nh.gov/safety/divisions/firesafety/building/electrician/deficiencies/1999/6.html", confirms: "1/2: 3 ft, 2: 5 ft" },
  ],
} as const satisfies CodeTable;

export const THREADED_SUPPORT = {
  id: "threaded-support",
  title: "Straight horizontal runs of RMC and IMC with threaded couplings: ft between supports; a row is a trade size",
  sections: { "2017": "Table 344.30(B)(2)", "2020": "Table 344.30(B)(2)", "2023": "Table 344.30(B)", "2026": "Table 344.30(B)" },
  columns: ["apart"],
  rows: {
    "1/2": ["10"],
    "3/4": ["10"],
    "1": ["12"],
    "1-1/4": ["14"],
    "1-1/2": ["14"],
    "2": ["16"],
    "2-1/2": ["16"],
    "3": ["20"],
    "3-1/2": ["20"],
    "4": ["20"],
    "5": ["20"],
    "6": ["20"],
  },
  groups: [{ standing: "published" }],
  sources: [
    { where: "https://www.engineeringtoolbox.com/amp/conduit-size-d_1738.html", confirms: "10, 12, 14, 16, 20 ft" },
    { where: "http://constructionmanuals.tpub.com/14027/css/Coduit-Hangers-and-Supports-119.htm", confirms: "10, 12, 14, 16, 20 ft" },
  ],
} as const satisfies CodeTable;
