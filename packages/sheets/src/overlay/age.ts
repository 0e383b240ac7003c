import type { Overlay } from "./schema.js";

/** Days after which what a jurisdiction asks has to be asked again (common practice, no source). */
export const STALE_AFTER_DAYS = 180;

const DAY = 86_400_000;
const dayOf = (date: string) => Date.parse(`${date}T00:00:00Z`);

/** Whole days from one date to another, both as 2026-01-31; null where one of them is not a date. */
export function daysBetween(from: string, to: string): number | null {
  const days = (dayOf(to) - dayOf(from)) / DAY;
  return Number.isNaN(days) ? null : Math.round(days);
}

/** What has to be said of an overlay's age, of its edition's day and of missing citations, on the day of a packet. */
export function overlayCautions(overlay: Overlay, date: string): readonly string[] {
  return [...ofAge(overlay, date), ...ofAdoption(overlay, date), ...ofCitations(overlay), ...ofUnasked(overlay)];
}

interface Dated {
  readonly what: string;
  readonly checked_on: string;
}

/** Every group and entry of the overlay with the day it was last compared. */
function datedParts(overlay: Overlay): readonly Dated[] {
  const named = (key: string, entry: object, i: number | null) => {
    const label = ["id", "name", "title"].map((field) => (entry as Record<string, unknown>)[field]).find((value) => typeof value === "string");
    return label === undefined
      ? i === null
        ? key.replaceAll("_", " ")
        : `${key.replaceAll("_", " ")} ${i + 1}`
      : `${key.replaceAll("_", " ")} "${String(label)}"`;
  };
  const date = (entry: object) => ("checked_on" in entry && typeof entry.checked_on === "string" ? entry.checked_on : overlay.checked_on);
  return [
    { what: "the overlay as a whole", checked_on: overlay.checked_on },
    ...Object.entries(overlay).flatMap(([key, value]): readonly Dated[] => {
      if (key === "changes" || typeof value !== "object" || value === null) return [];
      if (!Array.isArray(value)) return [{ what: named(key, value, null), checked_on: date(value) }];
      return value.map((entry: object, i) => ({ what: named(key, entry, i), checked_on: date(entry) }));
    }),
  ];
}

function ofAge(overlay: Overlay, date: string): readonly string[] {
  const parts = datedParts(overlay).map((part) => ({ ...part, days: daysBetween(part.checked_on, date) }));
  const stale = parts.filter((part) => part.days !== null && part.days > STALE_AFTER_DAYS);
  const future = parts.filter((part) => part.days !== null && part.days < 0);
  // Where the whole file is as old, its parts of that day go without saying.
  const told = stale.filter((part) => part === parts[0] || part.checked_on !== overlay.checked_on);
  const dates = [...new Set(told.map((part) => part.checked_on))];
  return [
    ...dates.map((checked) => {
      const group = told.filter((part) => part.checked_on === checked);
      return `Last compared with the jurisdiction on ${checked}, ${group[0]?.days} days before this packet, more than ${STALE_AFTER_DAYS}: ${group.map((p) => p.what).join(", ")}. Ask again before submitting.`;
    }),
    ...(future.length > 0 ? [`Said to have been compared after the day of this packet: ${future.map((p) => `${p.what} (${p.checked_on})`).join(", ")}.`] : []),
  ];
}

function ofAdoption({ adoption, edition }: Overlay, date: string): readonly string[] {
  if (adoption === undefined) return [];
  const until = daysBetween(date, adoption.from);
  if (until === null || until <= 0) return [];
  return [
    `The ${edition ?? "named"} edition is in force here from ${adoption.from}, ${until} days after this packet; the day of ${adoption.governs.replaceAll("-", " ")} decides. Ask which edition applies.`,
  ];
}

function ofCitations({ statements, checklist }: Overlay): readonly string[] {
  const without = [
    ...statements.filter((s) => s.citation === undefined).map((s) => `statement "${s.title}"`),
    ...checklist.filter((c) => c.citation === undefined).map((c) => `checklist line "${c.look}"`),
  ];
  return without.length === 0 ? [] : [`Entered without a citation: ${without.join("; ")}. Compare with the jurisdiction's own words.`];
}

/** What stands in an overlay in place of what nobody has asked yet. */
export const NOT_ASKED = "not asked yet";

/** Where that stands, by the field's path. */
function ofUnasked(overlay: Overlay): readonly string[] {
  const walk = (value: unknown, path: string): readonly string[] => {
    if (value === NOT_ASKED) return [path];
    if (typeof value !== "object" || value === null) return [];
    return Object.entries(value).flatMap(([key, inner]) => walk(inner, path === "" ? key : `${path}.${key}`));
  };
  const found = walk(overlay, "");
  return found.length === 0 ? [] : [`Not asked yet: ${found.join(", ")}. Ask the jurisdiction and fill it in.`];
}
