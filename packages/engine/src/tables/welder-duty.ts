import { everyEdition } from "../basis/edition.js";
import type { CodeTable } from "./code-table.js";

export const WELDER_DUTY = {
  id: "welder-duty",
  title: "Multipliers of the rated primary current of arc welders; a row is named by duty cycle in per cent, 20 standing for 20 or less",
  sections: everyEdition("Table 630.11(A)"),
  columns: ["nonmotor", "motorGenerator"],
  rows: {
    "100": ["1.00", "1.00"],
    "90": ["0.95", "0.96"],
    "80": ["0.89", "0.91"],
    "70": ["0.84", "0.86"],
    "60": ["0.78", "0.81"],
    "50": ["0.71", "0.75"],
    "40": ["0.63", "0.69"],
    "30": ["0.55", "0.62"],
    "20": ["0.45", "0.55"],
  },
  groups: [
    { rows: ["100", "80", "70", "50", "40", "20"], columns: ["nonmotor"], standing: "published" },
    { rows: ["90", "60"], columns: ["motorGenerator"], standing: "published" },
    { standing: "one-source" },
  ],
  sources: [
    { where: "http://solar365.com/green-homes/national-electric-code-2008/electric-welders", confirms: "all 18 values, as printed in the 2008 edition" },
    { where: "https://www.ecmweb.com/nec/code-quiz-61", confirms: "nonmotor at 100, 80, 70 and 40 %; motor generator at 90 and 60 %" },
    { where: "http://ecmweb.com/print/qampa/code-qa-45?page=2", confirms: "nonmotor at 50 %" },
    { where: "https://forums.mikeholt.com/threads/630-12-over-current-protection-for-welders.2559497", confirms: "nonmotor at 20 %" },
  ],
} as const satisfies CodeTable;

export type WelderKind = (typeof WELDER_DUTY.columns)[number];
