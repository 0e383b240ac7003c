import { LINE_HEIGHT, wrap } from "./lettering.js";
import { ASCENT, circle, line, type Mark, type Point, text } from "./marks.js";
import { meet } from "./plane-geometry.js";

export interface Callout {
  readonly at: Point;
  readonly words: string;
  readonly bold?: boolean;
}
export interface Column {
  /** Edge of the words that faces the thing pointed at. */
  readonly x: number;
  readonly width: number;
  readonly top: number;
  /** Words to the right of the thing, or to its left. */
  readonly side: "right" | "left";
}
const GAP = 8;
const SHELF = 12;
const MOST_LINES = 4;

interface Block extends Callout {
  readonly lines: readonly string[];
}

/** A column of words, each with a leader to its place, spread so that none meet; leaders are kept from crossing where an order allows it. */
export function callOut(callouts: readonly Callout[], column: Column): { readonly marks: readonly Mark[]; readonly bottom: number } {
  let blocks: readonly Block[] = [...callouts]
    .sort((a, b) => a.at[1] - b.at[1] || a.at[0] - b.at[0])
    .map((c) => {
      const lines = wrap(c.words, column.width);
      return { ...c, lines: lines.length > MOST_LINES ? [...lines.slice(0, MOST_LINES - 1), "… (see the schedules)"] : lines };
    });
  const out = column.side === "right" ? -1 : 1;
  const elbowAt = (y: number): Point => [column.x + out * (SHELF + 4), y + LINE_HEIGHT / 2];
  let tops = spread(blocks, column.top);
  // Each exchange of two crossing neighbours shortens the leaders; the bound is only against rounding.
  for (let tries = blocks.length ** 2; tries > 0; tries--) {
    const leaders = blocks.map((block, i) => [block.at, elbowAt(tops[i]!)] as const);
    const crossing = leaders.findIndex((leader, i) => i + 1 < leaders.length && meet(leader, leaders[i + 1]!));
    if (crossing < 0) break;
    blocks = blocks.map((block, i) => (i === crossing ? blocks[i + 1]! : i === crossing + 1 ? blocks[i - 1]! : block));
    tops = spread(blocks, column.top);
  }
  const marks = blocks.flatMap(({ at, lines, bold = false }, i): Mark[] => {
    const y = tops[i]!;
    const elbow = elbowAt(y);
    return [
      line(at, elbow, "fine"),
      line(elbow, [column.x + out * 4, elbow[1]], "fine"),
      circle(at, 1.4, "fine", "black"),
      ...lines.map((l, n) => text([column.x, y + ASCENT + 1 + n * LINE_HEIGHT], l, { anchor: column.side === "right" ? "start" : "end", bold })),
    ];
  });
  const last = blocks.at(-1);
  return { marks, bottom: last === undefined ? column.top : tops.at(-1)! + last.lines.length * LINE_HEIGHT };
}

/** Tops of the blocks in their order, each as near its place as the others let it: blocks that would meet share the mean of their wishes. */
function spread(blocks: readonly Block[], top: number): readonly number[] {
  const groups: { sum: number; count: number; height: number; members: number[] }[] = [];
  const topOf = (g: (typeof groups)[number]) => Math.max(top, g.sum / g.count);
  for (const block of blocks) {
    const height = block.lines.length * LINE_HEIGHT + GAP;
    let group = { sum: block.at[1] - LINE_HEIGHT / 2, count: 1, height, members: [height] };
    for (let before = groups.at(-1); before !== undefined && topOf(before) + before.height > topOf(group); before = groups.at(-1)) {
      groups.pop();
      // A later member's wish, told as a wish for the group's top.
      group = {
        sum: before.sum + group.sum - group.count * before.height,
        count: before.count + group.count,
        height: before.height + group.height,
        members: [...before.members, ...group.members],
      };
    }
    groups.push(group);
  }
  return groups.flatMap((g) => {
    let y = topOf(g);
    return g.members.map((height) => {
      const here = y;
      y += height;
      return here;
    });
  });
}

/** Plain lines of words below one another, wrapped. */
export function paragraph(
  words: readonly string[],
  x: number,
  top: number,
  width: number,
  bold = false,
): { readonly marks: readonly Mark[]; readonly bottom: number } {
  const lines = words.flatMap((w) => wrap(w, width));
  return { marks: lines.map((l, i) => text([x, top + ASCENT + 1 + i * LINE_HEIGHT], l, { bold })), bottom: top + lines.length * LINE_HEIGHT };
}
