import type { Overlay } from "../overlay/schema.js";
import type { Block, Draft } from "./packet.js";
import type { PacketSet } from "./packet-set.js";
import { type DrawingRoom, PAPER_SIZES, type Paper, roomOfStamp, USUAL_STAMP } from "./paper.js";
import { namesSheet, SHEETS } from "./sheet-titles.js";

type StampArea = NonNullable<NonNullable<Overlay["intake"]>["stamp_area"]>;

/** The sheets that keep it where the overlay names none. */
const DRAWINGS: readonly string[] = [SHEETS.site, SHEETS.oneLine];

/** What a page can keep clear, in inches: its body by less than its height; beside a large drawing, the column there. */
const MOST = { small: { width: 7.25, height: 8 }, beside: { width: USUAL_STAMP.width_in, height: 8 } } as const;
/** A drawing under less height than this is of no use, in points. */
const LEAST_ROOM = 216;

/** Whether a sheet of this title is to keep the area. */
export const keepsStamp = (area: StampArea, title: string): boolean => namesSheet(title, area.sheets ?? DRAWINGS);

/** Whether this paper has the area to keep. */
export function holdsStamp({ width_in, height_in }: StampArea, paper: Paper): boolean {
  const most = PAPER_SIZES[paper].large === null ? MOST.small : MOST.beside;
  return width_in <= most.width && height_in <= most.height;
}

/** Where the area is kept, for the jurisdiction's sheet. */
export const keptWords = (area: StampArea, paper: Paper): string =>
  holdsStamp(area, paper) ? `kept on ${(area.sheets ?? DRAWINGS).join(", ")}` : "NOT kept: larger than a page of this set holds; ask how the stamp is given";

/** The room a drawing has under the stamp; null where that is too little, or where the stamp stands beside it. */
export function roomUnder(area: StampArea | undefined, paper: Paper): DrawingRoom | null {
  if (area === undefined || !holdsStamp(area, paper)) return null;
  const { room, large } = PAPER_SIZES[paper];
  if (large !== null) return null;
  const height = room.height - roomOfStamp(area.height_in);
  return height < LEAST_ROOM ? null : { width: room.width, height };
}

/** A sheet of what is handed in with the area kept clear: above its drawing where that leaves the room, else after all it holds. */
export function stamped(draft: Draft, intake: Overlay["intake"], paper: Paper, set: PacketSet): Draft {
  const area = intake?.stamp_area;
  if (area === undefined) return draft;
  // The jurisdiction's own area takes the place of the one that drawings keep by themselves.
  const blocks = draft.blocks.map((block): Block => (block.kind === "drawing" ? { ...block, stamp: false } : block));
  if (set !== "submittal" || !keepsStamp(area, draft.title) || !holdsStamp(area, paper)) return { ...draft, blocks, stamp: null };
  const [first] = draft.blocks;
  const height = first?.kind === "drawing" ? Number(/^<svg[^>]* height="([\d.]+)pt"/.exec(first.svg)?.[1] ?? Number.NaN) : 0;
  const under = roomUnder(area, paper)?.height ?? 0;
  const at = first?.kind !== "drawing" || height <= under ? "first" : "last";
  return { ...draft, blocks, stamp: { width: String(area.width_in), height: String(area.height_in), at } };
}
