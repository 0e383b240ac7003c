import type { Design } from "@branchwork/engine";
import { overlayCautions } from "../overlay/age.js";
import { amendmentWords } from "../overlay/amendment-words.js";
import type { AmendedBasis } from "../overlay/apply.js";
import type { Overlay } from "../overlay/schema.js";
import { type Block, type Draft, paragraph, table, withWidths } from "./packet.js";
import type { Paper } from "./paper.js";
import { SHEETS } from "./sheet-titles.js";
import { keptWords } from "./stamp.js";
import { plainId } from "./worked-lines.js";

const MODES: Readonly<Record<NonNullable<Overlay["intake"]>["mode"], string>> = {
  "over-the-counter": "Over the counter: no plans are looked at. The load calculation is taken along; the rest of this packet is for the field inspector.",
  "small-plan-set": "A small set of plans is reviewed before the permit: the sheets asked for are handed in together.",
  "affidavit-and-schematic": "An affidavit and a schematic are handed in; the rest of this packet is kept for the inspector.",
};
const SIZES: Readonly<Record<NonNullable<Overlay["intake"]>["sheet_size"], string>> = {
  letter: "Letter, 8½ × 11 in",
  tabloid: "Tabloid, 11 × 17 in",
  "arch-d": "Arch D, 24 × 36 in",
  a3: "A3, 297 × 420 mm",
  a4: "A4, 210 × 297 mm",
};

const rows = (caption: string, head: readonly string[], widths: readonly number[], cells: readonly (readonly string[])[]): readonly Block[] =>
  cells.length === 0 ? [] : [withWidths(table(caption, head, cells), ...widths)];

/** What the jurisdiction asks beyond the code: application, persons, amendments, limits, contacts; null where no overlay says. `where` tells in which sheet of which set a title stands. */
export function jurisdictionSheet(given: {
  readonly overlay: Overlay | null;
  readonly basis: AmendedBasis;
  readonly design: Design;
  readonly date: string;
  readonly paper: Paper;
  readonly where: (title: string) => string | null;
}): Draft | null {
  const { overlay, basis, design, date, paper, where } = given;
  if (overlay === null) return null;
  const { adoption } = overlay;
  return {
    title: SHEETS.jurisdiction,
    blocks: [
      paragraph(`${overlay.name}. Last compared with the jurisdiction's own words on ${overlay.checked_on}; ask whether anything has changed.`),
      ...overlayCautions(overlay, date).map((caution) => paragraph(`CAUTION: ${caution}`)),
      ...(adoption === undefined
        ? []
        : [
            paragraph(
              `NFPA 70-${design.edition} is in force from ${adoption.from}; the day of ${plainId(adoption.governs)} decides (${adoption.citation}).${adoption.says === undefined ? "" : ` ${adoption.says}`}`,
            ),
          ]),
      ...application(overlay, paper, where),
      ...persons(overlay),
      ...rows("Notes", ["Concerns", "Note", "Source"], [18, 52, 30], notes(overlay, design)),
      ...amendments(overlay, basis),
      ...limits(overlay),
      ...rows(
        "Amendments that were not applied",
        ["Where", "What", "To mend it"],
        [30, 40, 30],
        basis.issues.map((i) => [i.path, i.what, i.mend]),
      ),
      ...contacts(overlay),
    ],
  };
}

function application({ intake }: Overlay, paper: Paper, where: (title: string) => string | null): readonly Block[] {
  if (intake === undefined) return [];
  const { stamp_area: stamp } = intake;
  const copies = intake.copies === 0 ? "none on paper" : `${intake.copies} on paper`;
  return [
    paragraph(`${MODES[intake.mode]} (${intake.citation})`),
    ...rows(
      "Form of the application",
      ["Item", "Asked"],
      [26, 74],
      [
        ["Sheet size", SIZES[intake.sheet_size]],
        ["Copies", copies],
        ...(intake.title_block.length === 0 ? [] : [["On every sheet", intake.title_block.join(", ")]]),
        ...(stamp === undefined
          ? []
          : [["Kept clear for the stamp", `${stamp.width_in} in wide, ${stamp.height_in} in high, ${stamp.where}; ${keptWords(stamp, paper)}`]]),
        ...(intake.file_rules === undefined ? [] : [["Files", intake.file_rules]]),
      ],
    ),
    ...rows(
      "To be handed in or shown",
      ["Asked", "Where it is", "Done"],
      [52, 38, 10],
      intake.sheets.map(({ asks, sheet }) => {
        return [asks, (sheet === undefined ? null : where(sheet)) ?? "not in this packet: bring it", ""];
      }),
    ),
  ];
}

const WHO: Readonly<Record<Overlay["who_may_work"][number]["who"], string>> = {
  owner: "The owner",
  "owner-family": "The owner's family",
  "licensed-electrician": "A licensed electrician",
  other: "Others",
};

function persons({ who_may_work, proofs }: Overlay): readonly Block[] {
  return [
    ...rows(
      "Who may do the work",
      ["Who", "May", "Under which limits", "Source"],
      [20, 8, 44, 28],
      who_may_work.map((w) => [WHO[w.who], w.may ? "yes" : "NO", w.says, w.citation]),
    ),
    ...rows(
      "Proofs asked",
      ["Proof", "Source"],
      [64, 36],
      proofs.map((p) => [p.says, p.citation]),
    ),
  ];
}

/** Notes on a kind of outlet go only where the job has one, named by its circuits. */
function notes({ notes: all, checklist }: Overlay, design: Design): readonly (readonly string[])[] {
  return all.flatMap((note) => {
    const devices = note.device === undefined ? [] : design.circuits.filter((c) => c.circuit.serves === note.device).map((c) => c.circuit.name);
    if (note.device !== undefined && devices.length === 0) return [];
    const line = checklist.find((c) => c.id !== undefined && c.id === note.checklist)?.look;
    const concerns = [note.sheet, note.section, line === undefined ? undefined : `checklist: ${line}`, ...devices].filter((x) => x !== undefined);
    return [[concerns.join(", ") || "all", note.says, note.citation]];
  });
}

function amendments(overlay: Overlay, basis: AmendedBasis): readonly Block[] {
  const others = overlay.amendments.filter((a) => a.target !== "cover" && a.target !== "check");
  return [
    ...rows(
      "Least cover of buried wiring",
      ["Place", "Here", "In the code's table", "Source"],
      [30, 14, 20, 36],
      Object.entries(basis.leastCover).map(([row, c]) => [plainId(row), `${c.inches} in`, `${c.replaces} in`, c.citation]),
    ),
    ...rows(
      "Checks turned off",
      ["Check", "Reason", "Source"],
      [25, 45, 30],
      Object.entries(basis.waivedChecks).map(([check, w]) => [plainId(check), w.reason, w.citation]),
    ),
    ...rows(
      "Other amendments",
      ["Amendment"],
      [100],
      others.map((a) => [amendmentWords(a)]),
    ),
  ];
}

function limits({ wiring_methods, riser, warning_ribbon, load_calculation, zoning }: Overlay): readonly Block[] {
  return rows(
    "Limits and local rules",
    ["Concerns", "Here", "Source"],
    [24, 46, 30],
    [
      ...wiring_methods.map((w) => [`Wiring ${w.places.join(", ")}`, `only ${w.methods.join(", ")}: ${w.reason}`, w.citation]),
      ...(riser === undefined ? [] : [["Risers out of the ground", `only ${riser.methods.join(", ")}: ${riser.reason}`, riser.citation]]),
      ...(warning_ribbon === undefined ? [] : [["Warning ribbon", warning_ribbon.says, warning_ribbon.citation]]),
      ...(load_calculation === undefined
        ? []
        : [["Load calculation", `by ${load_calculation.methods.map(plainId).join(" or ")}: ${load_calculation.reason}`, load_calculation.citation]]),
      ...(zoning === undefined ? [] : [["Zoning", zoning.says, zoning.citation]]),
    ],
  );
}

function contacts({ contacts: offices = [], utility, one_call }: Overlay): readonly Block[] {
  const extra = (...parts: readonly (string | undefined)[]) => parts.filter((part) => part !== undefined).join("; ");
  return rows(
    "Contacts",
    ["Name", "Phone", "Hours and more"],
    [36, 20, 44],
    [
      ...offices.map((c) => [c.name, c.phone, extra(c.hours, c.address, c.web)]),
      ...(utility === undefined ? [] : [[`Utility: ${utility.name}`, utility.phone, extra(utility.hours, utility.address, utility.web, utility.says)]]),
      ...(one_call === undefined
        ? []
        : [
            [`Before digging: ${one_call.name}`, one_call.phone, extra(one_call.hours, one_call.address, one_call.web, `wait ${one_call.wait} before digging`)],
          ]),
    ],
  );
}

/** Local notes that stand on the sheet they name, by the beginning of its title. */
export function sheetNotes(overlay: Overlay | null, title: string): readonly Block[] {
  return (overlay?.notes ?? [])
    .filter((note) => note.sheet !== undefined && title.startsWith(note.sheet))
    .map((note) => paragraph(`Local note: ${note.says} (${note.citation})`));
}
