import { namesSheet } from "../compose/sheet-titles.js";
import type { AmendmentIssue } from "./apply.js";
import { nameOneOf } from "./name-near.js";
import type { Overlay } from "./schema.js";
import type { AmendmentTargets } from "./targets.js";

/** Names that lead nowhere, figures that contradict one another: what the schema alone cannot see. */
export function danglingNames(overlay: Overlay, targets: AmendmentTargets): readonly AmendmentIssue[] {
  return [...ofMethods(overlay, targets), ...ofNotes(overlay, targets), ...ofSheets(overlay, targets), ...ofFees(overlay, targets), ...ofDates(overlay)];
}

function unknown(path: string, what: string, names: readonly string[], known: readonly string[] | undefined): readonly AmendmentIssue[] {
  if (known === undefined) return [];
  return names.flatMap((name, i) =>
    known.includes(name) ? [] : [{ path: `${path}.${i}`, what: `there is no ${what} "${name}"`, mend: nameOneOf(name, known) }],
  );
}

function ofMethods({ wiring_methods, riser, load_calculation }: Overlay, targets: AmendmentTargets): readonly AmendmentIssue[] {
  const limited = new Set<string>();
  return [
    ...wiring_methods.flatMap((limit, i) => {
      const twice = limit.places.filter((place) => limited.has(place));
      for (const place of limit.places) limited.add(place);
      return [
        ...unknown(`wiring_methods.${i}.methods`, "wiring method", limit.methods, targets.methods),
        ...twice.map((place) => ({ path: `wiring_methods.${i}.places`, what: `"${place}" is limited twice`, mend: "keep one of the two" })),
      ];
    }),
    ...unknown("riser.methods", "wiring method", riser?.methods ?? [], targets.methods),
    ...unknown("load_calculation.methods", "load calculation method", load_calculation?.methods ?? [], targets.loadMethods),
  ];
}

function ofNotes({ notes, checklist }: Overlay, targets: AmendmentTargets): readonly AmendmentIssue[] {
  const lines = checklist.flatMap((line) => line.id ?? []);
  return notes.flatMap((note, i) => [
    ...(note.checklist === undefined || lines.includes(note.checklist)
      ? []
      : [
          {
            path: `notes.${i}.checklist`,
            what: `no checklist line has the id "${note.checklist}"`,
            mend: lines.length > 0 ? `name one of ${lines.join(", ")}` : "give the checklist line an id",
          },
        ]),
    ...(note.device === undefined || targets.outlets === undefined || targets.outlets.includes(note.device)
      ? []
      : [{ path: `notes.${i}.device`, what: `there is no kind of outlet "${note.device}"`, mend: nameOneOf(note.device, targets.outlets) }]),
  ]);
}

/** Sheets that the intake or a note names. */
function ofSheets({ intake, notes }: Overlay, { sheets }: AmendmentTargets): readonly AmendmentIssue[] {
  if (sheets === undefined) return [];
  const named = [
    ...(intake?.sheets ?? []).map(({ sheet }, i) => ({ path: `intake.sheets.${i}.sheet`, sheet })),
    ...(intake?.stamp_area?.sheets ?? []).map((sheet, i) => ({ path: `intake.stamp_area.sheets.${i}`, sheet })),
    ...notes.map(({ sheet }, i) => ({ path: `notes.${i}.sheet`, sheet })),
  ];
  const empty =
    intake?.nothing_else === true && intake.sheets.every(({ sheet }) => sheet === undefined)
      ? [
          {
            path: "intake.nothing_else",
            what: "no entry of intake.sheets names a sheet, so nothing would be handed in",
            mend: `give an entry its sheet: one of ${sheets.join("; ")}`,
          },
        ]
      : [];
  const wrong = named.flatMap(({ path, sheet }) =>
    sheet === undefined || namesSheet(sheet, sheets) ? [] : [{ path, what: `there is no sheet "${sheet}"`, mend: nameOneOf(sheet, sheets) }],
  );
  return [...empty, ...wrong];
}

function ofFees({ fees }: Overlay, targets: AmendmentTargets): readonly AmendmentIssue[] {
  return fees.flatMap((fee, i) => {
    const issues: AmendmentIssue[] = [];
    const path = `fees.${i}`;
    if (fees.slice(0, i).some((earlier) => earlier.id === fee.id))
      issues.push({ path: `${path}.id`, what: `two fees have the id "${fee.id}"`, mend: "give one an id of its own" });
    if (fee.kind === "per-circuit") {
      const open = fee.bands.findIndex((band) => band.to === undefined);
      if (open >= 0 && open < fee.bands.length - 1)
        issues.push({ path: `${path}.bands.${open}`, what: "a band without its upper end stands before another", mend: "put it last" });
      fee.bands.forEach((band, j) => {
        const before = fee.bands[j - 1]?.to;
        if (before !== undefined && band.to !== undefined && band.to <= before)
          issues.push({
            path: `${path}.bands.${j}.to`,
            what: `${band.to} A does not lie above the ${before} A before it`,
            mend: "put the bands in rising order",
          });
      });
    }
    if (fee.kind === "surcharge" || fee.kind === "waiver")
      fee.of.forEach((id, j) => {
        const named = fees.slice(0, i).find((earlier) => earlier.id === id);
        if (named === undefined || named.kind === "contingent")
          issues.push({ path: `${path}.of.${j}`, what: `no fee "${id}" that is summed stands above this one`, mend: "name a fee by its id and put it above" });
      });
    if (fee.kind === "per-opening") issues.push(...unknown(`${path}.serves`, "kind of outlet", fee.serves ?? [], targets.outlets));
    return issues;
  });
}

const isDate = (date: string) => !Number.isNaN(Date.parse(`${date}T00:00:00Z`)) && new Date(`${date}T00:00:00Z`).toISOString().slice(0, 10) === date;

/** Days there are none of, as 2026-02-30, anywhere in the overlay. */
function ofDates(overlay: Overlay): readonly AmendmentIssue[] {
  const walk = (value: unknown, path: string): readonly AmendmentIssue[] => {
    if (typeof value === "string")
      return /(^|\.)(checked_on|from|until)$/.test(path) && /^\d{4}-\d{2}-\d{2}$/.test(value) && !isDate(value)
        ? [{ path, what: `there is no day ${value}`, mend: "correct the date" }]
        : [];
    if (typeof value !== "object" || value === null) return [];
    return Object.entries(value).flatMap(([key, inner]) => walk(inner, path === "" ? key : `${path}.${key}`));
  };
  return walk(overlay, "");
}
