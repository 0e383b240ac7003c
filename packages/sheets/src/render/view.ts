import type { Block, Packet, Sheet } from "../compose/packet.js";
import { USUAL_STAMP } from "../compose/paper.js";

/** A packet as its templates read it: the level of each caption, and where its numbers are worked, are settled here. */
export function viewOf(packet: Packet) {
  const anchors = anchorsOf(packet);
  const placed = new Set<string>();
  const viewed = (block: Block, level: Level): object => {
    const h = `h${level}`;
    switch (block.kind) {
      case "together":
        return { ...block, blocks: levelled(block.blocks, level).map(([inner, own]) => viewed(inner, own)) };
      case "calc":
        return {
          ...block,
          h,
          lines: block.lines.map((line) => {
            // The same value may be worked on two sheets: the first is the one links lead to.
            const anchor = line.id === undefined || placed.has(line.id) ? "" : (anchors.get(line.id) ?? "");
            if (line.id !== undefined) placed.add(line.id);
            return { ...line, anchor };
          }),
        };
      case "table": {
        const sums = block.head.map((_, column) => block.rows.some(({ cells }) => MONEY.test(cells[column] ?? "")));
        return {
          ...block,
          h,
          sums,
          written: block.rows.every(({ cells }) => cells.filter((text) => text === "").length >= FEWEST_BLANKS),
          rows: block.rows.map(({ cells, fresh, lines }) => ({
            fresh,
            cells: cells.map((text, i) => ({ text, sum: sums[i] ?? false, to: anchors.get(lines?.[i] ?? "") ?? "" })),
          })),
        };
      }
      case "brief": {
        const parted = block.runOn === true && block.entries.length > 2 * LAST_ENTRIES;
        return parted ? { ...block, entries: block.entries.slice(0, -LAST_ENTRIES), tail: block.entries.slice(-LAST_ENTRIES) } : { ...block, tail: null };
      }
      case "checklist":
        return { ...block, h };
      case "drawing":
        return { ...block, stamp: block.stamp ? usualStamp : null };
      default:
        return block;
    }
  };
  return {
    ...packet,
    sheets: packet.sheets.map((sheet) => {
      const blocks = levelled(sheet.blocks, 2).map(([block, level]) => viewed(block, level));
      return { ...sheet, blocks, ...layoutOf(sheet, blocks) };
    }),
  };
}

/** Sums of money stand under one another by their cents. */
const MONEY = /^\$?[\d,]+\.\d\d$/;
/** Rows with as many blanks are written in by hand, on the knee: they are made higher. */
const FEWEST_BLANKS = 2;

/** Of a list in two columns, which must not end on a page with less. */
const LAST_ENTRIES = 8;

type Level = 2 | 3;

/** Captions stand one level under a heading of the same sheet. */
function levelled(blocks: readonly Block[], from: Level): readonly (readonly [Block, Level])[] {
  let level = from;
  return blocks.map((block) => {
    const own = level;
    if (block.kind === "heading" || (block.kind === "together" && block.blocks.some(({ kind }) => kind === "heading"))) level = 3;
    return [block, own];
  });
}

/** Of each worked value printed as a calculation line, the name of that line on the page. */
function anchorsOf(packet: Packet): ReadonlyMap<string, string> {
  const anchors = new Map<string, string>();
  const gather = (block: Block): void => {
    if (block.kind === "together") block.blocks.forEach(gather);
    if (block.kind === "calc") for (const { id } of block.lines) if (id !== undefined && !anchors.has(id)) anchors.set(id, `line-${anchors.size + 1}`);
  };
  for (const { blocks } of packet.sheets) blocks.forEach(gather);
  return anchors;
}

const usualStamp = { width: String(USUAL_STAMP.width_in), height: String(USUAL_STAMP.height_in) };

/** A plate's drawing apart from what stands beside it; a sheet without a drawing of its own is no plate. */
function layoutOf({ layout, stamp, blocks: [first] }: Sheet, blocks: readonly object[]) {
  const plate = layout === "plate" && first?.kind === "drawing";
  const kept = stamp ?? null;
  return {
    size: layout === undefined ? "" : ` large${layout === "twin" ? " twin" : ""}`,
    plate: plate ? first.svg : "",
    beside: plate ? blocks.slice(1) : [],
    kept: {
      beside: stamp === undefined ? usualStamp : kept,
      first: kept?.at === "first" ? kept : null,
      last: kept?.at === "last" ? kept : null,
    },
  };
}
