/** What was typed for a quantity as the job's file writes it: a bare number has the unit of its field, one with a unit keeps it. */
export function withUnit(typed: string, unit: string): string {
  const text = typed.trim();
  return /^[-\d.,/]+$/.test(text) ? `${text} ${unit}` : text;
}
