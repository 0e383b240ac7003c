import type { Change } from "@branchwork/engine";
import { type Block, blanks, heading, type Packet, paragraph, type Sheet, table, withWidths } from "./packet.js";

export interface Revision {
  readonly number: string;
  readonly date: string;
  /** What was changed and why, in a line. */
  readonly says: string;
}
interface Revised {
  readonly packet: Packet;
  readonly was: Packet;
  readonly revision: Revision;
  /** Those before it, oldest first. */
  readonly earlier?: readonly Revision[];
  readonly changes: readonly Change[];
}

/** The capital delta stands for the revision triangle: the faces we print with have it. */
const triangle = ({ number }: Revision): string => `Δ${number}`;

/**
 * A packet made again after a change: each row and sheet that is otherwise than before carries the revision's triangle, the title
 * block names the revision, and a sheet after the cover tells what changed. Earlier revisions keep their rows in the table of
 * revisions and lose their triangles on the sheets, as drafting offices commonly do.
 */
export function revisePacket({ packet, was, revision, earlier = [], changes }: Revised): Packet {
  const mark = triangle(revision);
  const before = new Map(was.sheets.map((sheet) => [sheet.title, sheet]));
  const sheets = packet.sheets.map((sheet) => {
    const old = before.get(sheet.title);
    const changed = old === undefined || words(old) !== words(sheet);
    return {
      sheet,
      changed,
      isNew: old === undefined,
      blocks: changed && old !== undefined ? sheet.blocks.map((block) => marked(block, rowsOf(old.blocks), mark)) : sheet.blocks,
    };
  });
  const withdrawn = was.sheets.filter(({ title }) => !packet.sheets.some((sheet) => sheet.title === title)).map(({ title }) => title);
  const cover = sheets.findIndex(({ sheet }) => sheet.title === "Cover") + 1;
  const [letter = "P"] = packet.sheets[0]?.id.split("-") ?? [];
  const id = (index: number): string => `${letter}-${index < cover ? index + 1 : index + 2}`;
  const told = sheets.map(({ sheet, changed, isNew }, i) => ({ id: id(i), title: sheet.title, changed, isNew }));
  const own = { id: `${letter}-${cover + 1}`, title: `${mark} Revisions` };
  const titles = [...told.slice(0, cover), { ...own, changed: false }, ...told.slice(cover)].map((t) => ({
    id: t.id,
    title: t.changed ? `${mark} ${t.title}` : t.title,
  }));
  const numbered = (sheet: Pick<Sheet, "title" | "blocks" | "layout" | "stamp">, i: number): Sheet => ({
    ...sheet,
    id: titles[i]!.id,
    title: titles[i]!.title,
    number: String(i + 1),
    of: String(titles.length),
    blocks: sheet.blocks.map((block) => (block.kind === "sheetIndex" ? { ...block, entries: titles } : block)),
  });
  const all = sheets.map(({ sheet, blocks }) => ({ ...sheet, blocks }));
  const page = { title: own.title, blocks: revisionBlocks({ revision, earlier, changes, sheets: told, withdrawn }) };
  return {
    ...packet,
    foot: { ...packet.foot, revision: { number: mark, date: revision.date, says: `see ${own.id}` } },
    sheets: [...all.slice(0, cover), page, ...all.slice(cover)].map(numbered),
  };
}

/** A sheet's words without its number and without the index, which goes by the whole set. */
const words = (sheet: Sheet): string => JSON.stringify(sheet.blocks.filter((block) => block.kind !== "sheetIndex"));

/** Every row, line and paragraph of a sheet as text, to tell what is new in a later one. */
function rowsOf(blocks: readonly Block[]): ReadonlySet<string> {
  return new Set(
    blocks.flatMap((block): readonly string[] => {
      switch (block.kind) {
        case "together":
          return [...rowsOf(block.blocks)];
        case "table":
          return block.rows.map((row) => key(row.cells));
        case "calc":
          return block.lines.map(key);
        case "checklist":
          return block.items.map(key);
        case "brief":
        case "boxed":
          return block.entries.map((entry) => key(entry));
        case "paragraph":
        case "heading":
          return [key(block.text)];
        case "drawing":
        case "blanks":
        case "sheetIndex":
          return [];
        default:
          return block satisfies never;
      }
    }),
  );
}
const key = (row: unknown): string => JSON.stringify(row);

function marked(block: Block, old: ReadonlySet<string>, mark: string): Block {
  const isNew = (row: unknown): boolean => !old.has(key(row));
  const led = (text: string): string => `${mark} ${text}`.trim();
  switch (block.kind) {
    case "together":
      return { ...block, blocks: block.blocks.map((inner) => marked(inner, old, mark)) };
    case "table":
      return {
        ...block,
        rows: block.rows.map((row) => (isNew(row.cells) ? { ...row, cells: row.cells.map((cell, i) => (i === 0 ? led(cell) : cell)) } : row)),
      };
    case "calc":
      return { ...block, lines: block.lines.map((line) => (isNew(line) ? { ...line, label: led(line.label) } : line)) };
    case "checklist":
      return { ...block, items: block.items.map((item) => (isNew(item) ? { ...item, look: led(item.look) } : item)) };
    case "brief":
      return { ...block, entries: block.entries.map((entry) => (isNew(entry) ? { ...entry, title: led(entry.title) } : entry)) };
    case "boxed":
      return { ...block, entries: block.entries.map((entry) => (isNew(entry) ? { ...entry, title: led(entry.title) } : entry)) };
    case "paragraph":
    case "heading":
      return isNew(block.text) ? { ...block, text: led(block.text) } : block;
    case "drawing":
    case "blanks":
    case "sheetIndex":
      return block;
    default:
      return block satisfies never;
  }
}

interface ToldSheet {
  readonly id: string;
  readonly title: string;
  readonly changed: boolean;
  readonly isNew: boolean;
}

function revisionBlocks(given: {
  readonly revision: Revision;
  readonly earlier: readonly Revision[];
  readonly changes: readonly Change[];
  readonly sheets: readonly ToldSheet[];
  readonly withdrawn: readonly string[];
}): readonly Block[] {
  const { revision, earlier, changes, sheets, withdrawn } = given;
  const of = (kind: Change["kind"]) => changes.filter((change) => change.kind === kind);
  const rows = (kind: Change["kind"]) => of(kind).map(({ says, was, now }) => [says, was ?? "—", now ?? "—"]);
  const part = (caption: string, head: string, kind: Change["kind"]): Block[] => {
    const found = rows(kind);
    return found.length === 0 ? [paragraph(`${caption}: nothing.`)] : [withWidths(table(caption, [head, "Was", "Is now"], found), ...[44, 28, 28])];
  };
  const listed = (caption: string, found: readonly Change[]): Block[] =>
    found.length === 0
      ? [paragraph(`${caption}: nothing.`)]
      : [
          heading(caption),
          { kind: "brief", entries: found.map(({ says, was, now }) => ({ title: says, text: `was ${was ?? "not there"}, is now ${now ?? "not there"}` })) },
        ];
  const changed = sheets.filter((sheet) => sheet.changed);
  const where = changed.map(({ id }) => id).join(", ") || "no sheet";
  const mended = of("finding").filter(({ was, now }) => was?.startsWith("fail") === true && now?.startsWith("fail") !== true);
  const replies = [
    ...of("input").map(({ says, was, now }) => `${says}: ${was ?? "not given"} is now ${now ?? "not given"}`),
    ...mended.map(({ says }) => `${says}: no longer fails`),
  ];
  return [
    withWidths(
      table(
        "Revisions",
        ["Number", "Date", "What"],
        [...earlier, revision].map((one) => [triangle(one), one.date, one.says]),
        (row) => row === earlier.length,
      ),
      ...[12, 18, 70],
    ),
    paragraph(
      `Rows and sheets marked ${triangle(revision)} are otherwise than in the set before. A drawing that changed is told by the mark in its sheet's title.${earlier.length === 0 ? "" : " The triangles of earlier revisions are taken off the sheets; their rows stay in this table (a habit of drafting offices: common practice, no source)."}`,
    ),
    ...part("Entered otherwise", "Entry", "input"),
    withWidths(
      table(
        "Sheets",
        ["Sheet", "Title", "What"],
        [...changed.map(({ id, title, isNew }) => [id, title, isNew ? "new" : "changed"]), ...withdrawn.map((title) => ["—", title, "withdrawn"])],
      ),
      ...[14, 62, 24],
    ),
    withWidths(
      table(
        "Replies to corrections: enter the reviewer's item beside each",
        ["Item", "Reply", "Sheets where changed"],
        replies.length === 0 ? [["", "nothing was entered otherwise", where]] : replies.map((reply) => ["", reply, where]),
      ),
      ...[10, 60, 30],
    ),
    blanks("Answered by", "Date"),
    ...part("Found otherwise", "Finding", "finding"),
    ...listed("Worked otherwise", of("worked")),
  ];
}
