import { type DrawingRoom, PAPER_SIZES, type Paper, roomOfStamp, USUAL_STAMP } from "./paper.js";
import type { SheetName } from "./sheet-titles.js";

/** A packet as plain data: every leaf is a string ready to print, apart from the drawings, which are our own SVG. */
export interface Packet {
  readonly title: string;
  /** The set's name as each sheet's head prints it. */
  readonly set: string;
  readonly ready: boolean;
  /** What it is printed on; Letter when left out. */
  readonly paper?: Paper;
  readonly foot: TitleBlock;
  readonly sheets: readonly Sheet[];
}

/** The fields at the foot of every sheet. */
export interface TitleBlock {
  readonly project: string;
  readonly owner: string;
  readonly site: string;
  readonly parcel: string;
  readonly jurisdiction: string;
  readonly edition: string;
  readonly preparer: string;
  readonly date: string;
  /** Empty texts in the first set. */
  readonly revision: { readonly number: string; readonly date: string; readonly says: string };
}

export interface Sheet {
  readonly id: string;
  readonly title: string;
  readonly number: string;
  readonly of: string;
  readonly blocks: readonly Block[];
  readonly layout?: SheetLayout;
  /** The area the jurisdiction wants kept clear on this sheet, null where it wants none; left out, where no jurisdiction says. */
  readonly stamp?: KeptClear | null;
}

/** A blank area for a stamp, in inches: ahead of what the sheet holds, or after it. */
export interface KeptClear {
  readonly width: string;
  readonly height: string;
  readonly at: "first" | "last";
}

/**
 * How a sheet lies on large paper: "plate" has its drawing at the left and the stamp area with all else at the right, "twin" two columns.
 * One without is text, on a small page.
 */
export type SheetLayout = "plate" | "twin";

export type Block = Heading | Paragraph | Boxed | Table | Brief | Checklist | CalcLines | Drawing | Blanks | SheetIndex | Together;

export interface Heading {
  readonly kind: "heading";
  readonly text: string;
}
export interface Paragraph {
  readonly kind: "paragraph";
  readonly text: string;
}
/** A plain box of numbered entries: the refusal, and the cautions. */
export interface Boxed {
  readonly kind: "boxed";
  readonly title: string;
  readonly lead: string;
  readonly entries: readonly { readonly title: string; readonly lines: readonly string[] }[];
}
export interface Table {
  readonly kind: "table";
  readonly caption: string;
  readonly head: readonly string[];
  /** Column widths in percent; empty leaves them to the browser. */
  readonly widths: readonly string[];
  readonly rows: readonly { readonly cells: readonly string[]; readonly fresh: boolean; readonly lines?: LineRefs }[];
}
/** For each cell of a row, the calculation whose result it repeats: the id of its worked value, null where it repeats none. */
export type LineRefs = readonly (string | null)[];
/** A close-set list: one line of text an entry, led by its title; run on, all of it is one paragraph. */
export interface Brief {
  readonly kind: "brief";
  readonly runOn?: boolean;
  readonly entries: readonly { readonly title: string; readonly text: string }[];
}
export interface Checklist {
  readonly kind: "checklist";
  readonly caption: string;
  readonly sectionHead: string;
  /** Blanks under the list, for whoever passes it. */
  readonly sign: readonly string[];
  readonly items: readonly { readonly section: string; readonly look: string; readonly show: string /** How to show it. */; readonly how: string }[];
}
export interface CalcLines {
  readonly kind: "calc";
  readonly caption: string;
  readonly lines: readonly CalcLine[];
}
export interface CalcLine {
  /** Of its worked value. */
  readonly id?: string;
  readonly label: string;
  readonly expression: string;
  readonly result: string;
  readonly sources: readonly string[];
}
export interface Drawing {
  readonly kind: "drawing";
  readonly svg: string;
  /** Whether the sheet has room above the drawing for the jurisdiction's stamp. */
  readonly stamp: boolean;
}
/** The sheets of the set, in order. */
export interface SheetIndex {
  readonly kind: "sheetIndex";
  readonly caption: string;
  readonly entries: readonly { readonly id: string; readonly title: string }[];
}
/** Blocks that stay on one page while they fit on one: a signature with what is signed; abreast, each half a sheet wide. */
export interface Together {
  readonly kind: "together";
  readonly abreast?: boolean;
  readonly blocks: readonly Block[];
}
/** Blanks to be filled by hand. */
export interface Blanks {
  readonly kind: "blanks";
  readonly labels: readonly string[];
}

/** A sheet before it has its place in the set. */
export interface Draft {
  readonly title: string;
  readonly blocks: readonly Block[];
  readonly layout?: SheetLayout;
  readonly stamp?: KeptClear | null;
}
/** A draft and which of the sheets it is. */
export interface Named {
  readonly name: SheetName;
  readonly draft: Draft;
}

export const heading = (text: string): Heading => ({ kind: "heading", text });
export const paragraph = (text: string): Paragraph => ({ kind: "paragraph", text });
export const together = (...blocks: Block[]): Together => ({ kind: "together", blocks });
export const abreast = (...blocks: Block[]): Together => ({ kind: "together", abreast: true, blocks });
export const blanks = (...labels: string[]): Blanks => ({ kind: "blanks", labels });

/** A table of existing rows; `fresh` rows are the new work and print heavy. */
export function table(caption: string, head: readonly string[], rows: readonly (readonly string[])[], fresh: (index: number) => boolean = () => false): Table {
  return { kind: "table", caption, head, widths: [], rows: rows.map((cells, index) => ({ cells, fresh: fresh(index) })) };
}

/** The same table with its column widths set, in percent of the sheet. */
export const withWidths = (made: Table, ...percent: number[]): Table => ({ ...made, widths: percent.map(String) });

/** The same table with the calculations its cells repeat; `refs` has a row for each of its rows. */
export const withLines = (made: Table, refs: readonly LineRefs[]): Table => ({
  ...made,
  rows: made.rows.map((row, i) => (refs[i] === undefined ? row : { ...row, lines: refs[i] })),
});

/** A drawing of our own; its height in points tells whether a stamp has room above it, where the stamp does not stand beside it. */
export function drawing(svg: string, room: DrawingRoom = PAPER_SIZES.letter.room): Drawing {
  const height = /^<svg[^>]* height="([\d.]+)pt"/.exec(svg)?.[1];
  return { kind: "drawing", svg, stamp: height !== undefined && Number(height) <= room.height - roomOfStamp(USUAL_STAMP.height_in) };
}

/** A detail or a plot within a sheet: no stamp goes with it. */
export const figure = (svg: string): Drawing => ({ kind: "drawing", svg, stamp: false });
