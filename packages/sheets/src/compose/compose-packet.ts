import { type Design, outletUse, type PriceBook } from "@branchwork/engine";
import { drawOneLine } from "../drawing/one-line.js";
import { overlayCautions } from "../overlay/age.js";
import { basisFrom } from "../overlay/apply.js";
import type { Overlay } from "../overlay/schema.js";
import type { AmendmentTargets } from "../overlay/targets.js";
import { calculationsSheet, loadSheet } from "./calculations.js";
import { checklistSheet, correctionResponseSheet, inspectionCardSheet } from "./checklist.js";
import { coverSheet, preparerOf, refusalSheet, shortCover, statementsSheet } from "./cover.js";
import { feesSheet } from "./fees.js";
import { findingsSheet } from "./findings.js";
import { takenBy } from "./intake.js";
import { jurisdictionSheet, sheetNotes } from "./jurisdiction.js";
import { labelsSheet } from "./labels.js";
import { materialsSheet } from "./materials.js";
import { type Block, type Draft, drawing, type Named, type Packet, type SheetLayout } from "./packet.js";
import { PACKET_SETS, type PacketSet, SET_LETTERS, SET_NAMES } from "./packet-set.js";
import { PAPER_SIZES, type Paper } from "./paper.js";
import { faultTableSheet, fedByHouse, readingsSheet } from "./readings.js";
import { directorySheets, schedulesSheet } from "./schedules.js";
import { plotBlocks, sectionsSheet } from "./sections.js";
import { SHEETS, type SheetName } from "./sheet-titles.js";
import { sitePlanSheet } from "./site.js";
import { keepsStamp, roomUnder, stamped } from "./stamp.js";
import { tagsTable } from "./tags-table.js";
import { troubleSheet } from "./trouble.js";
import { useLimitsSheet } from "./use-limits.js";
import { workSheet } from "./work.js";

export interface PacketParts {
  readonly design: Design;
  readonly overlay: Overlay | null;
  /** Printed in the title block as given. */
  readonly date: string;
  /** What the overlay's amendments are compared with. */
  readonly targets?: AmendmentTargets;
  /** The submittal when left out. */
  readonly set?: PacketSet;
  /** Prices for the owner's list of materials. */
  readonly prices?: PriceBook;
  /** Letter when left out. */
  readonly paper?: Paper;
}

/** The sheets of each set after its cover, in order. */
const SETS: Readonly<Record<PacketSet, readonly SheetName[]>> = {
  submittal: ["statements", "site", "oneLine", "sections", "load", "calculations", "schedules", "panel", "jurisdiction", "fees", "findings"],
  field: ["checklist", "card", "response", "readings", "faultTable", "labels"],
  owner: ["work", "materials", "useLimits", "trouble"],
};
/** How the sheets that are drawings lie on large paper. */
const LAYOUTS: Partial<Record<SheetName, SheetLayout>> = { site: "plate", oneLine: "plate", sections: "twin", panel: "twin" };
/** For the applicant alone, so in the owner's set where the submittal does not take them. */
const APPLICANTS: readonly SheetName[] = ["jurisdiction", "fees"];

/** One set of the packet as plain data. While a check fails or an amendment does not fit, its first sheet is a refusal. */
export function composePacket({ design, overlay, date, targets, set = "submittal", prices, paper = "letter" }: PacketParts): Packet {
  const basis = basisFrom(overlay, design.edition, targets);
  const ready = design.ready && basis.issues.length === 0;
  const computed = computedSheets({ design, overlay, date, prices: prices ?? null, set, paper });
  const jurisdictionFor = (where: (title: string) => string | null) => jurisdictionSheet({ overlay, basis, design, date, paper, where });
  // The jurisdiction sheet names the sheets that answer what is asked, so it is made when they are known.
  const unplaced = jurisdictionFor(() => null);
  const offered = inOrder(
    [...computed, ...(unplaced === null ? [] : [{ name: "jurisdiction", draft: unplaced } satisfies Named])],
    PACKET_SETS.flatMap((each) => SETS[each]),
  );
  const sets = splitInSets(offered, overlay);
  const where = (title: string): string | null => {
    const standsIn = (name: PacketSet) => sets[name].find(({ draft }) => draft.title.startsWith(title));
    const here = standsIn(set);
    if (here !== undefined) return here.draft.title;
    const other = PACKET_SETS.find((name) => standsIn(name) !== undefined);
    return other === undefined ? null : `${standsIn(other)!.draft.title} (${SET_NAMES[other].toLowerCase()})`;
  };
  const after = sets[set].map(({ name, draft }): Draft => {
    const made = (name === "jurisdiction" ? jurisdictionFor(where) : null) ?? draft;
    const layout = PAPER_SIZES[paper].large === null ? undefined : LAYOUTS[name];
    return stamped(
      { ...made, blocks: [...made.blocks, ...sheetNotes(overlay, made.title)], ...(layout === undefined ? {} : { layout }) },
      overlay?.intake,
      paper,
      set,
    );
  });
  const before: Draft[] = ready ? [] : [refusalSheet(design, basis.issues)];
  const id = (index: number) => `${SET_LETTERS[set]}-${index + 1}`;
  const titles = [...before.map((d) => d.title), SHEETS.cover, ...after.map((d) => d.title)].map((title, index) => ({ id: id(index), title }));
  const given = { design, overlay, ready, titles };
  const COVERS: Readonly<Record<PacketSet, () => Draft>> = {
    submittal: () => coverSheet({ ...given, left: sets.left, overlayCautions: overlay === null ? [] : overlayCautions(overlay, date) }),
    field: () => shortCover(given, "For the work and for whoever inspects it: keep it on site until the final has passed.", true),
    owner: () => shortCover(given, "For the owner: what to do and buy in which order, and how the finished work is used. Keep it with the house.", false),
  };
  const drafts = [...before, stamped(COVERS[set](), overlay?.intake, paper, set), ...after];
  const { project } = design.job;
  return {
    title: project.title,
    set: SET_NAMES[set],
    ready,
    paper,
    foot: {
      project: project.title,
      owner: project.owner,
      site: project.site,
      parcel: project.parcel ?? "",
      jurisdiction: overlay?.name ?? "",
      edition: `NFPA 70-${design.edition}${overlay !== null && overlay.amendments.length > 0 ? " as amended" : ""}`,
      preparer: preparerOf(project.preparer),
      date,
      revision: { number: "", date: "", says: "" },
    },
    sheets: drafts.map((draft, index) => ({ ...draft, id: id(index), number: String(index + 1), of: String(drafts.length) })),
  };
}

const inOrder = (sheets: readonly Named[], order: readonly SheetName[]): readonly Named[] =>
  order.flatMap((name) => sheets.filter((sheet) => sheet.name === name));

/** Which sheets go into which set, and what the intake leaves out of the submittal: the inspector has it on site, or the owner. */
function splitInSets(offered: readonly Named[], overlay: Overlay | null): Readonly<Record<PacketSet, readonly Named[]>> & { readonly left: readonly string[] } {
  const of = (names: readonly SheetName[]) => offered.filter(({ name }) => names.includes(name));
  const { taken, left } = takenBy(overlay?.intake, offered, SETS.submittal);
  const isApplicants = ({ name }: Named) => APPLICANTS.includes(name);
  const [applicants, inspectors] = [left.filter(isApplicants), left.filter((one) => !isApplicants(one))];
  const told = (found: readonly Named[], name: PacketSet) =>
    found.length === 0 ? [] : [`in the ${SET_NAMES[name].toLowerCase()} ${found.map(({ draft }) => draft.title).join(", ")}`];
  return {
    submittal: taken,
    field: [...of(SETS.field), ...inspectors],
    owner: [...of(SETS.owner), ...applicants],
    left: [...told(inspectors, "field"), ...told(applicants, "owner")],
  };
}

/** More than the notes under a drawing take, in points: so many letters a line of the sheet, and its gap. */
const heightOfNotes = (notes: readonly Block[]): number =>
  notes.reduce((sum, note) => sum + (note.kind === "paragraph" ? 5 + 13 * Math.ceil(note.text.length / 100) : 0), 0);

/** Every sheet that comes from the design, of whatever set. */
function computedSheets(given: {
  readonly design: Design;
  readonly overlay: Overlay | null;
  readonly date: string;
  readonly prices: PriceBook | null;
  readonly set: PacketSet;
  readonly paper: Paper;
}): readonly Named[] {
  const { design, overlay, date, prices, paper } = given;
  const { room, large } = PAPER_SIZES[paper];
  // Worked by simulation and slow: in another set only their titles are asked for.
  const whole = (name: SheetName, there: boolean, make: () => Draft | null): readonly [SheetName, Draft | null] => [
    name,
    SETS[given.set].includes(name) ? make() : there ? { title: SHEETS[name], blocks: [] } : null,
  ];
  const read = design.circuits.some(fedByHouse);
  const plots = plotBlocks(design);
  const stamp = overlay?.intake?.stamp_area;
  const under = (title: string) => (stamp !== undefined && given.set === "submittal" && keepsStamp(stamp, title) ? roomUnder(stamp, paper) : null);
  const noted = heightOfNotes(sheetNotes(overlay, SHEETS.oneLine));
  // A stamp that has no room above the drawing takes a page of its own: no fewer pages than a drawing parted under it.
  const left = under(SHEETS.oneLine) ?? room;
  const drawings = drawOneLine(design, large === null ? { ...left, height: left.height - noted } : left);
  const made: readonly (readonly [SheetName, Draft | null])[] = [
    ["statements", statementsSheet(design, overlay)],
    ["site", sitePlanSheet(design, room, under(SHEETS.site))],
    ...drawings.map((svg, i): readonly [SheetName, Draft] => [
      "oneLine",
      {
        title: drawings.length === 1 ? SHEETS.oneLine : `${SHEETS.oneLine}, part ${i + 1}`,
        blocks: [drawing(svg, room), ...(large === null || i > 0 ? [] : tagsTable(design))],
      },
    ]),
    ["sections", sectionsSheet(design)],
    ["load", loadSheet(design, plots.load)],
    ["calculations", calculationsSheet(design, plots.profiles)],
    ["schedules", schedulesSheet(design)],
    ...directorySheets(design).map((draft): readonly [SheetName, Draft] => ["panel", draft]),
    ["fees", feesSheet(design, overlay, date)],
    ["findings", findingsSheet(design)],
    ["checklist", checklistSheet(design, overlay)],
    ["card", inspectionCardSheet(design, overlay)],
    ["response", correctionResponseSheet()],
    whole("readings", true, () => readingsSheet(design)),
    whole("faultTable", read, () => faultTableSheet(design)),
    ["labels", labelsSheet(design)],
    ["work", workSheet(design)],
    whole("materials", true, () => materialsSheet(design, prices)),
    whole(
      "useLimits",
      design.circuits.some((c) => outletUse(design, c, []) !== null),
      () => useLimitsSheet(design),
    ),
    whole("trouble", read, () => troubleSheet(design)),
  ];
  return made.flatMap(([name, draft]) => (draft === null ? [] : [{ name, draft }]));
}
