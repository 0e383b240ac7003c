/** The sheets of all sets by their titles. An entry that ends with a colon has a name after it. */
export const SHEETS = {
  refusal: "Not ready to submit",
  cover: "Cover",
  statements: "Cautions, assumptions and statements",
  site: "Site plan",
  oneLine: "One-line diagram",
  sections: "Trench and raceway sections",
  load: "Load calculation",
  calculations: "Circuit calculations",
  schedules: "Schedules",
  panel: "Panel:",
  jurisdiction: "Jurisdiction notes",
  fees: "Fees and inspections",
  findings: "Findings",
  checklist: "Inspection checklist",
  card: "Inspection card",
  response: "Response to corrections",
  readings: "Acceptance test readings",
  faultTable: "What wrong readings mean",
  labels: "Labels",
  materials: "Materials",
  work: "Order of work",
  useLimits: "What may run together",
  trouble: "When something is wrong",
} as const;
export type SheetName = keyof typeof SHEETS;

export const SHEET_TITLES: readonly string[] = Object.values(SHEETS);

/** Whether a name, the beginning of a title or a title with what follows it, is that of a sheet. */
export const namesSheet = (name: string, titles: readonly string[]): boolean => titles.some((title) => title.startsWith(name) || name.startsWith(title));
