import { InputError } from "../load-design.js";

/** The day asked for, as 2026-11-25; today when left out. */
export function dayOf(text: string | undefined): string {
  const date = text ?? new Date().toISOString().slice(0, 10);
  const parsed = new Date(`${date}T00:00:00Z`);
  if (!/^\d{4}-\d{2}-\d{2}$/.test(date) || Number.isNaN(parsed.getTime()) || parsed.toISOString().slice(0, 10) !== date)
    throw new InputError("--date", [{ path: "", what: `"${date}" is not a date`, mend: "write it as 2026-11-25" }]);
  return date;
}
