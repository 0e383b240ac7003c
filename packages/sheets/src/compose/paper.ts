/** A page of paper by name; the two large ones are for drawings, their text goes on the small sheet of the same family. */
export const PAPERS = ["letter", "tabloid", "a4", "a3"] as const;
export type Paper = (typeof PAPERS)[number];

/** Room for a drawing, in points (1/72 in). */
export interface DrawingRoom {
  readonly width: number;
  readonly height: number;
}

/** A page box and its margins as the style sheet writes them, top right bottom left; the left one leaves room for punched holes. */
export interface PageBox {
  readonly size: string;
  readonly margin: string;
  /** Between the side margins. */
  readonly body: string;
}

interface PaperSizes {
  readonly text: PageBox;
  /** Landscape sheets for drawings, where the paper has them. */
  readonly large: PageBox | null;
  /** Beside the stamp area on a large sheet, above the title block on a small one. */
  readonly room: DrawingRoom;
}

/** The area kept clear for a stamp where no jurisdiction says, in inches. */
export const USUAL_STAMP = { width_in: 5.75, height_in: 3.75 } as const;
/** The room for a drawing leaves so much of the page to spare, less the gap under a stamp, in points. */
const SPARE = 42;
/** What a stamp so many inches high takes of the room for a drawing under it, in points. */
export const roomOfStamp = (height_in: number): number => height_in * 72 - SPARE;

/** Letter type area, which the A4 sheet keeps so that a set breaks into lines alike on both. */
const BODY = "7.25in";
const LETTER: PageBox = { size: "Letter portrait", margin: "0.4in 0.5in 0.5in 0.75in", body: BODY };
const A4: PageBox = { size: "210mm 297mm", margin: "0.4in 10.6mm 0.5in 15.25mm", body: BODY };

export const PAPER_SIZES: Readonly<Record<Paper, PaperSizes>> = {
  letter: { text: LETTER, large: null, room: { width: 522, height: 572 } },
  tabloid: { text: LETTER, large: { size: "17in 11in", margin: "0.4in 0.5in 0.5in 0.75in", body: "15.75in" }, room: { width: 704, height: 576 } },
  a4: { text: A4, large: null, room: { width: 522, height: 620 } },
  a3: { text: A4, large: { size: "420mm 297mm", margin: "0.4in 10.6mm 0.5in 15.25mm", body: "394.15mm" }, room: { width: 688, height: 624 } },
};
