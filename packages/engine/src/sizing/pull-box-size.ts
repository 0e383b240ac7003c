import type { Edition } from "../basis/edition.js";
import { Decimal, decimal } from "../quantity.js";
import type { Size } from "../tables/size.js";
import type { AnyTradeSize } from "../tables/trade-size.js";
import { type Worked, worked } from "../worked.js";
import { anglePull, backEntryDepth, entryDistance, straightPull } from "./pull-box.js";

export type BoxWall = "left" | "right" | "top" | "bottom" | "back";

export interface BoxEntry {
  readonly id: string;
  readonly wall: BoxWall;
  /** Rows of one wall are counted apart. */
  readonly row: number;
  readonly tradeSize: AnyTradeSize;
}

/** Conductors from one entry to another; spliced ones count as turned. */
export interface BoxPull {
  readonly from: string;
  readonly to: string;
  readonly spliced?: boolean;
}

export interface PullBoxSize {
  /** Left to right, in; null when no pull sets it. */
  readonly width: Worked | null;
  /** Top to bottom, in. */
  readonly height: Worked | null;
  /** Back to cover, in; null without back entries, or where Table 312.6(A) names no figure. */
  readonly depth: Worked | null;
  /** Edge to edge between the two entries of each pull that turns. */
  readonly distances: readonly Worked[];
}

const OPPOSITE: Readonly<Record<Exclude<BoxWall, "back">, BoxWall>> = { left: "right", right: "left", top: "bottom", bottom: "top" };
const ACROSS: Readonly<Record<"width" | "height", readonly BoxWall[]>> = { width: ["left", "right"], height: ["top", "bottom"] };

/** Least inside size of a box with conductors of 4 AWG or larger, from its entries and pulls. Each rule is worked; the largest governs. 314.28(A). */
export function pullBoxSize(given: {
  readonly id: string;
  readonly entries: readonly BoxEntry[];
  readonly pulls: readonly BoxPull[];
  /** Largest conductor through an entry in the back. */
  readonly backConductor?: Size;
  readonly edition: Edition;
}): PullBoxSize {
  const { id, entries, edition } = given;
  const pulls = given.pulls.map((pull) => ({ ...pull, a: entryOf(entries, pull.from), b: entryOf(entries, pull.to) }));
  const isStraight = (pull: (typeof pulls)[number]) => !pull.spliced && pull.a.wall !== "back" && OPPOSITE[pull.a.wall] === pull.b.wall;
  const turned = pulls.filter((pull) => !isStraight(pull));
  const side = (name: "width" | "height"): Worked | null => {
    const walls = ACROSS[name];
    const through = pulls.filter((pull) => isStraight(pull) && walls.includes(pull.a.wall)).flatMap(({ a, b }) => [a.tradeSize, b.tradeSize]);
    const [first, ...rest] = through;
    const straight = first === undefined ? [] : [straightPull({ id: `${id}.${name}.straight`, tradeSizes: [first, ...rest], edition })];
    const rows = rowsTurned(turned, walls).map(({ wall, row }, i) => {
      const [one, ...others] = entries.filter((entry) => entry.wall === wall && entry.row === row).map((entry) => entry.tradeSize);
      return anglePull({ id: `${id}.${name}.${wall}.${i + 1}`, row: [one!, ...others], edition });
    });
    return greatest(`${id}.${name}`, name === "width" ? "Box, left to right" : "Box, top to bottom", [...straight, ...rows], edition);
  };
  const hasBack = entries.some((entry) => entry.wall === "back");
  return {
    width: side("width"),
    height: side("height"),
    depth: hasBack && given.backConductor !== undefined ? backEntryDepth({ id: `${id}.depth`, largest: given.backConductor, edition }) : null,
    distances: turned
      .filter((pull) => !pull.spliced)
      .map(({ a, b }) => entryDistance({ id: `${id}.${a.id}-${b.id}`, pair: [a.tradeSize, b.tradeSize], edition })),
  };
}

function entryOf(entries: readonly BoxEntry[], id: string): BoxEntry {
  const entry = entries.find((e) => e.id === id);
  if (entry === undefined) throw new RangeError(`no entry ${id} in the box`);
  return entry;
}

function rowsTurned(turned: readonly { readonly a: BoxEntry; readonly b: BoxEntry }[], walls: readonly BoxWall[]): { wall: BoxWall; row: number }[] {
  const ends = turned.flatMap(({ a, b }) => [a, b]).filter((entry) => walls.includes(entry.wall));
  const seen = new Map(ends.map((entry) => [`${entry.wall} ${entry.row}`, { wall: entry.wall, row: entry.row }]));
  return [...seen.values()];
}

function greatest(id: string, label: string, candidates: readonly Worked[], edition: Edition): Worked | null {
  const [first] = candidates;
  if (first === undefined) return null;
  const value = candidates.map((c) => decimal(c.value)).reduce((a, b) => Decimal.max(a, b));
  return worked({
    id,
    label,
    value: value.toFixed(),
    unit: "in",
    expression: candidates.length === 1 ? first.expression : `max(${candidates.map((c) => c.expression).join(", ")})`,
    inputs: candidates.map((c) => c.id),
    citations: candidates.flatMap((c) => c.citations),
    edition,
  });
}
