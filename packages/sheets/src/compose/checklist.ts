import { type Citation, CORRECTIONS, type Design, type InspectionPart, inspectionChecklist } from "@branchwork/engine";
import type { Overlay } from "../overlay/schema.js";
import { type Block, blanks, type Checklist, type Draft, heading, paragraph, table, withWidths } from "./packet.js";
import { SHEETS } from "./sheet-titles.js";
import { sectionOrDash } from "./worked-lines.js";

type Item = Checklist["items"][number];

/** The parts of this job's inspection with what the jurisdiction adds to each; its trench lines go only where there is a trench. */
function partsOf(design: Design, overlay: Overlay | null): readonly { readonly part: InspectionPart; readonly items: readonly Item[] }[] {
  const parts = inspectionChecklist(design);
  const runs = new Set(parts.flatMap((part) => part.lines.flatMap((line) => line.run ?? [])));
  const only = runs.size === 1 ? [...design.feeders, ...design.circuits].find((made) => runs.has(made.run.id))?.run.name : undefined;
  // A jurisdiction's rough-in lines are seen at the final where this job has no rough-in; its trench lines need a trench.
  const lacksRough = parts.every((part) => part.stage !== "rough");
  return parts.map((part) => {
    const items = part.lines.map(
      (line): Item => ({ section: marked(line.section, design.edition), look: withoutOnly(line.look, only), show: line.seen, how: line.how }),
    );
    const local = (overlay?.checklist ?? [])
      .filter((line) => line.stage === part.stage || (lacksRough && line.stage === "rough" && part.stage === "final"))
      .map(
        (line): Item => ({
          section: line.section,
          look: line.look,
          show: [line.show, ...localNotes(overlay, line.id)]
            .filter((x) => x !== undefined)
            .join("; ")
            .replace(/\.$/, ""),
          how: "",
        }),
      );
    return { part, items: [...joined(items), ...local] };
  });
}

/** Lines that ask the same of several stretches or boxes become one that names them all, where the first of them stood. */
function joined(items: readonly Item[]): readonly Item[] {
  const alike = new Map<string, { readonly item: Item; readonly names: string[]; readonly asks: string }>();
  for (const item of items) {
    const at = item.look.indexOf(": ");
    const asks = item.look.slice(at + 2);
    const key = JSON.stringify([item.section, asks, item.show, item.how]);
    const same = at < 0 ? undefined : alike.get(key);
    if (same === undefined) alike.set(at < 0 ? JSON.stringify(item) : key, { item, names: at < 0 ? [] : [item.look.slice(0, at)], asks });
    else if (!same.names.includes(item.look.slice(0, at))) same.names.push(item.look.slice(0, at));
  }
  return [...alike.values()].map(({ item, names, asks }) => (names.length < 2 ? item : { ...item, look: `${names.join("; ")}: ${asks}` }));
}

/** What the jurisdiction notes of one of its checklist lines. */
function localNotes(overlay: Overlay | null, id: string | undefined): readonly string[] {
  return (overlay?.notes ?? []).filter((note) => id !== undefined && note.checklist === id).map((note) => note.says);
}

/** How well a section is known, as a mark told at the head of the sheet: a note in each row would double its height. */
const STANDING_MARKS: Readonly<Record<Citation["standing"], string>> = { published: "", "one-source": "\u00a0‡", memory: "\u00a0†", practice: "\u00a0*" };
const marked = (citation: Citation, edition: Design["edition"]): string =>
  `${sectionOrDash({ ...citation, standing: "published" }, edition)}${STANDING_MARKS[citation.standing]}`;

/** Where the job has one run its name goes without saying. */
function withoutOnly(look: string, only: string | undefined): string {
  if (only === undefined || !/^(, |: )/.test(look.slice(only.length)) || !look.startsWith(only)) return look;
  const rest = look.slice(only.length + 2);
  return `${rest.charAt(0).toUpperCase()}${rest.slice(1)}`;
}

/** The inspection checklist in the order an inspector walks, each part with what it holds up and blanks to fill. */
export function checklistSheet(design: Design, overlay: Overlay | null): Draft {
  const contacts = (overlay?.contacts ?? []).map((c) => `${c.name} ${c.phone}${c.hours === undefined ? "" : ` (${c.hours})`}`);
  return {
    title: SHEETS.checklist,
    blocks: [
      paragraph(
        "Do not cover, backfill or energize anything before its stage has passed. The inspector decides what is seen and when. Panel fronts come off by a qualified person only. † from memory: verify in the adopted text; ‡ one source; * common practice, no source.",
      ),
      ...(contacts.length === 0 ? [] : [paragraph(`To ask for an inspection: ${contacts.join("; ")}.`)]),
      ...partsOf(design, overlay).flatMap(({ part, items }): Block[] => [
        {
          kind: "checklist",
          caption: `${part.title}. ${part.hold}`,
          sectionHead: `NFPA 70-${design.edition}`,
          items,
          sign: [`${part.title.split(",")[0]} passed: inspector`, "Date", "Remarks"],
        },
      ]),
    ],
  };
}

/** One page to hang at the work: a row for each visit of this job, to be signed. */
export function inspectionCardSheet(design: Design, overlay: Overlay | null): Draft {
  const { project } = design.job;
  const stages = partsOf(design, overlay).map(({ part, items }) => [part.title, String(items.length), part.hold.replace("HOLD: ", ""), "", "", "", ""]);
  return {
    title: SHEETS.card,
    blocks: [
      paragraph(`Keep this card at the work, to be seen from the street with the house number: ${project.site}. Owner: ${project.owner}.`),
      blanks("Permit number", "Issued", "Expires", "Inspections are asked for at"),
      withWidths(
        table(
          "Visits",
          ["Stage", "Lines", "Hold until passed", "Asked for", "Date seen", "Passed or correct", "Inspector"],
          [...stages, ["Again, if corrected", "", "", "", "", "", ""], ["Again, if corrected", "", "", "", "", "", ""]],
        ),
        ...[19, 7, 26, 11, 11, 12, 14],
      ),
      paragraph("Do not cover, backfill, close or energize anything whose visit has not passed."),
      heading("What inspectors correct most often"),
      { kind: "brief", entries: correctedAt(design) },
    ],
  };
}

/** The common corrections that this job's checklist has lines for, each at the first visit that sees it. */
function correctedAt(design: Design): readonly { readonly title: string; readonly text: string }[] {
  const parts = inspectionChecklist(design);
  const first = CORRECTIONS.flatMap(({ says, lines }) => {
    const part = parts.find(({ lines: seen }) => seen.some((line) => lines.includes(line.id)));
    return part === undefined ? [] : [{ stage: part.stage, says }];
  });
  return parts.map(({ stage, title }) => ({
    title,
    text: first
      .filter((one) => one.stage === stage)
      .map(({ says }, i) => (i === 0 ? says : `${says.charAt(0).toLowerCase()}${says.slice(1)}`))
      .join("; "),
  }));
}

const REPLY_ROWS = 12;

/** Where the applicant answers the corrections written at review or on site, item by item. */
export function correctionResponseSheet(): Draft {
  const empty = Array.from({ length: REPLY_ROWS }, (_, i) => [String(i + 1), "", "", "", ""]);
  return {
    title: SHEETS.response,
    blocks: [
      paragraph(
        "One row for each correction, in the reviewer's numbering. Say what was changed and on which sheet; mark the change there with its revision number.",
      ),
      blanks("Permit number", "Correction list dated", "Reviewer or inspector"),
      withWidths(table("Corrections and replies", ["Item", "Correction", "Reply", "Sheet where changed", "Cleared, initials"], empty), ...[7, 33, 34, 14, 12]),
      blanks("Answered by", "Date"),
    ],
  };
}
