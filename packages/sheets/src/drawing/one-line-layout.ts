import { breakerAcross, breakerDown, earthDown, equipmentAcross, meterDown, outletAcross, type PortedSymbol, utilityDown } from "../symbols/one-line-marks.js";
import { LETTER_SIZE, LINE_HEIGHT, widthOf, wrap } from "./lettering.js";
import { box, type Drawing, fitted, line, type Mark, type Point, path, text, type Weight } from "./marks.js";
import type { Bus, OnWay, Row, Supply } from "./one-line-tree.js";

/** The room a drawing may take, in points. */
export interface Room {
  readonly width: number;
  readonly height: number;
}

const BUS_X = 16;
const ABOVE = 27;
const LEAST_BELOW = 36;
const THREE_BELOW = 42;
/** The most under a row: its name in as many lines as it may have, the other words a line each, and its sizes each broken in three. */
const mostBelow = (row: Row): number => {
  const words = row.end.is === "panel" ? 0 : NAME_LINES - 1 + row.end.words.length;
  return THREE_BELOW + LINE_HEIGHT * (Math.max(0, words - 3) + 3 * row.sizes.length);
};
const TAG_GAP = 8;
/** Room that "100 A, 240 V, 4 wires" takes. */
const END_WORDS = 154;
const LEGEND = 50;
/** The bar of a bus and its earth. */
const EARTH = { bar: 20, drop: 32, words: 48, gap: 16, height: 42 } as const;
const BASELINE = LETTER_SIZE * 0.36;
const weightOf = (fresh: boolean): Weight => (fresh ? "heavy" : "thin");

/** A bus, or the rest of one, still to be drawn; `from` is the match line that leads to it. */
interface Pending {
  readonly bus: Bus;
  readonly firstRow: number;
  readonly from: string | null;
}

/**
 * The diagram on as many drawings as it needs. A bus runs down, its runs leave it to the right one under another, a fed panel's bus
 * hangs at the end of its feeder with its own runs before the next of the upper bus: so no line crosses another. What does not fit
 * goes on at a match line.
 */
export function layOneLine(supply: Supply, room: Room): readonly Drawing[] {
  const pending: Pending[] = [{ bus: supply.bus, firstRow: 0, from: null }];
  const drawings: Drawing[] = [];
  let matches = 0;
  for (let next = pending.shift(); next !== undefined; next = pending.shift()) {
    const marks: Mark[] = [];
    const limit = room.height - LEGEND;
    let y = next.from === null ? stations(marks, supply, room.width) : arrival(marks, next.from, next.bus.fresh);
    const later = (bus: Bus, firstRow: number) => {
      const match = matchName(matches++);
      pending.push({ bus, firstRow, from: match });
      return match;
    };
    y = layBus(marks, next, [BUS_X, y], room.width, limit, later);
    const height = y + LEGEND;
    marks.push(...legend(height, room.width));
    const part = drawings.length + 1;
    drawings.push({ title: "One-line diagram", alt: describe(next.bus, part), width: room.width, height, marks });
  }
  return drawings;
}

/** A to Z, then AA, AB …, by place from 0. */
const matchName = (place: number): string => `${place < 26 ? "" : matchName(Math.floor(place / 26) - 1)}${String.fromCharCode(65 + (place % 26))}`;

function stations(marks: Mark[], supply: Supply, width: number): number {
  const SYMBOLS: Record<Supply["stations"][number]["is"], PortedSymbol> = { utility: utilityDown, meter: meterDown, main: breakerDown };
  let y = 0;
  for (const { is, words } of supply.stations) {
    const symbol = SYMBOLS[is];
    marks.push(...symbol.draw([BUS_X, y], "thin"));
    const joined = words.join(", ");
    marks.push(text([BUS_X + 26, y + symbol.span / 2 + BASELINE], fitted(joined, width - BUS_X - 26)));
    y += symbol.span;
  }
  return y;
}

function arrival(marks: Mark[], match: string, fresh: boolean): number {
  marks.push(text([BUS_X + 10, 14], `From match line ${match}`), line([BUS_X, 0], [BUS_X, 22], weightOf(fresh)));
  return 22;
}

/** Draws a bus from `at` down with its rows; returns how far down it reached. */
function layBus(marks: Mark[], { bus, firstRow }: Pending, at: Point, width: number, limit: number, later: (bus: Bus, firstRow: number) => string): number {
  const [x, top] = at;
  const whole = firstRow === 0;
  const heading = (whole ? [bus.name, ...bus.words] : [`${bus.name}, continued`]).map((words) => fitted(words, width - x - 10));
  marks.push(...heading.map((words, i) => text([x + 10, top + LETTER_SIZE + i * LINE_HEIGHT], words, { bold: i === 0 && bus.fresh })));
  let y = top + heading.length * LINE_HEIGHT + 4;
  if (whole && bus.earth !== null) {
    const beside = earthBeside(bus, x, width);
    marks.push(...earthed(bus, bus.earth, beside === null ? [x + 12, y + EARTH.bar / 2 + 2] : [beside, top + EARTH.bar / 2 + 4], width));
    if (beside === null) y += EARTH.height;
  }
  let last = y;
  const room = limit - LINE_HEIGHT;
  for (let r = firstRow; r < bus.rows.length; r++) {
    const row = bus.rows[r]!;
    const needs = ABOVE + measureRow(row, x, width).below;
    // A part holds at least one row, however tall.
    if (y + needs > room && r > firstRow) {
      last = y + 4;
      marks.push(matchMark([x, last], "down", bus.fresh ? "heavy" : "medium"));
      marks.push(text([x + 16, y + LETTER_SIZE], `More runs at match line ${later(bus, r)}`));
      y += LINE_HEIGHT;
      break;
    }
    last = y + ABOVE;
    y = layRow(marks, row, [x, last], width, room, later);
  }
  marks.push(line([x, top], [x, last], bus.fresh ? "heavy" : "medium"));
  return y;
}

/** Where the earth of a bus stands beside its heading; null where it has no room there, or no earth. */
function earthBeside(bus: Bus, x: number, width: number): number | null {
  if (bus.earth === null || bus.words.length === 0) return null;
  const left = x + 10 + Math.max(...[bus.name, ...bus.words].map(widthOf)) + EARTH.gap;
  return left + EARTH.words + widthOf(bus.earth.words) <= width ? left : null;
}

/** The bar of a panel that its grounding electrode hangs on, joined to none of its hots. */
function earthed(bus: Bus, { bar, words }: NonNullable<Bus["earth"]>, [x, y]: Point, width: number): readonly Mark[] {
  const weight = weightOf(bus.fresh);
  return [
    box(x, y - EARTH.bar / 2, EARTH.bar, EARTH.bar, weight),
    text([x + EARTH.bar / 2, y + BASELINE], bar, { anchor: "middle" }),
    line([x + EARTH.bar, y], [x + EARTH.drop, y], weight),
    ...earthDown.draw([x + EARTH.drop, y], weight),
    text([x + EARTH.words, y + BASELINE], fitted(words, width - x - EARTH.words)),
  ];
}

const tagWidth = (way: OnWay) => Math.max(26, widthOf(way.tag) + 8);
const BREAKER_END = 8 + breakerAcross.span;
const SYMBOL_WIDTH = 26;
/** How far in a second line of a stretch's wiring begins. */
const HANGING = 28;
const NAME_LINES = 2;

/** A row measured: its tags, where its way ends from the bus, and the words at its end. */
interface MeasuredRow {
  readonly way: readonly OnWay[];
  readonly breaker: string;
  readonly endX: number;
  /** The same where nothing stands at its end that its sizes must keep from. */
  readonly shortX: number;
  /** Its name, in as many lines as it takes up to NAME_LINES. */
  readonly name: readonly string[];
  readonly words: readonly string[];
  /** What lies in its way, under its line and left of its end. */
  readonly sizes: readonly { readonly says: string; readonly indent: number }[];
  /** How far under its line they begin. */
  readonly sizesFrom: number;
  readonly below: number;
}

function measureRow(row: Row, x0: number, width: number): MeasuredRow {
  const most = width - x0 - SYMBOL_WIDTH - 6 - END_WORDS;
  const lengthOf = (way: readonly OnWay[]) => BREAKER_END + TAG_GAP + way.reduce((sum, one) => sum + tagWidth(one) + TAG_GAP, 0);
  const way = lengthOf(row.way) <= most ? row.way : gathered(row.way);
  const breaker = fitted(row.breaker, Math.max(40, most - 18));
  const widest = Math.max(0, ...row.sizes.map(widthOf));
  const shortX = Math.max(lengthOf(way), 8 + widthOf(breaker) + 10);
  // Nothing but the line of a fed bus stands right of a feeder's sizes.
  const endX = Math.max(shortX, Math.min(8 + widest + 10, row.end.is === "panel" ? width - x0 - 20 : most));
  const sizesIn = (room: number) =>
    row.sizes.flatMap((says) =>
      widthOf(says) <= room ? [{ says, indent: 0 }] : wrap(says, room - HANGING).map((part, i) => ({ says: part, indent: i === 0 ? 0 : HANGING })),
    );
  const [called, ...rest] = row.end.is === "panel" ? [] : row.end.words;
  const room = width - x0 - endX - SYMBOL_WIDTH - 8;
  const lines = called === undefined ? [] : wrap(called, room);
  const name = lines.length <= NAME_LINES ? lines : [...lines.slice(0, NAME_LINES - 1), fitted(lines.slice(NAME_LINES - 1).join(" "), room)];
  const words = rest.map((said) => fitted(said, room));
  const deep = name.length + words.length;
  // The sizes stand left of the words at the end, or under them where that takes less height.
  const wordsBelow = deep < 3 ? LEAST_BELOW : THREE_BELOW + (deep - 3) * LINE_HEIGHT;
  const [beside, under] = [sizesIn(endX - 18), sizesIn(row.end.is === "panel" ? endX - 18 : width - x0 - 16)];
  const [left, whole] = [Math.max(LEAST_BELOW + beside.length * LINE_HEIGHT, wordsBelow), wordsBelow + under.length * LINE_HEIGHT];
  const [sizes, sizesFrom, below] = left <= whole ? [beside, LEAST_BELOW, left] : [under, wordsBelow, whole];
  return { sizesFrom, way, breaker, shortX, endX, name, words, sizes, below };
}

/** A way of many stretches told in two tags, W1 to W12 and J1 to J5. */
function gathered(way: readonly OnWay[]): readonly OnWay[] {
  const spanOf = (is: OnWay["is"]): readonly OnWay[] => {
    const tags = way.filter((one) => one.is === is).map((one) => one.tag);
    return tags.length === 0 ? [] : [{ is, tag: tags.length === 1 ? tags[0]! : `${tags[0]} to ${tags.at(-1)}` }];
  };
  return [...spanOf("conductors"), ...spanOf("box")];
}

function layRow(marks: Mark[], row: Row, at: Point, width: number, limit: number, later: (bus: Bus, firstRow: number) => string): number {
  const weight = weightOf(row.fresh);
  const [x0, y] = at;
  const { way, breaker, shortX, endX, name, words, sizes, sizesFrom, below } = measureRow(row, x0, width);
  marks.push(line([x0, y], [x0 + 8, y], weight), ...breakerAcross.draw([x0 + 8, y], weight));
  marks.push(text([x0 + 8, y + LETTER_SIZE + 12], breaker, { bold: row.fresh }));
  marks.push(...sizes.map(({ says, indent }, i) => text([x0 + 8 + indent, y + sizesFrom + 8 + i * LINE_HEIGHT], says)));
  let x = x0 + BREAKER_END;
  for (const one of way) {
    const w = tagWidth(one);
    marks.push(line([x, y], [x + TAG_GAP, y], weight));
    x += TAG_GAP;
    if (one.is === "box") marks.push(box(x, y - 11, w, 22, weight), text([x + w / 2, y + BASELINE], one.tag, { anchor: "middle" }));
    else
      marks.push(
        line([x, y], [x + w, y], weight),
        line([x + w / 2 - 4, y + 6], [x + w / 2 + 4, y - 6], "thin"),
        text([x + w / 2, y - 10], one.tag, { anchor: "middle" }),
      );
    x += w;
  }
  const end = x0 + endX;
  const lead = (to: number) => marks.push(line([x, y], [to, y], weight));
  if (row.end.is !== "panel") {
    lead(end);
    marks.push(...(row.end.is === "outlet" ? outletAcross : equipmentAcross).draw([end, y], weight));
    const first = y - 0.5 * LINE_HEIGHT + BASELINE;
    const told = [...name, ...words];
    marks.push(...told.map((line, i) => text([end + SYMBOL_WIDTH + 6, first + i * LINE_HEIGHT], line, { bold: i < name.length && row.fresh })));
    return y + below;
  }
  const { bus } = row.end;
  // The fed bus hangs straight at the feeder's end, or turned back under the feeder, or goes on elsewhere.
  const hung = hangings(x0, end, y, below).find(
    ({ at: [x, top] }) =>
      fitsAcross(bus, x, width) && top + busHeight(bus, (row) => measureRow(row, x, width).below, earthBeside(bus, x, width) !== null) <= limit,
  );
  if (hung === undefined) {
    const match = later(bus, 0);
    const on = x0 + shortX;
    lead(on);
    marks.push(matchMark([on, y], "right", weight), text([on + 14, y + BASELINE], fitted(`match line ${match}: ${bus.name}`, width - on - 14)));
    return y + below;
  }
  lead(end);
  marks.push(path(hung.way, weight));
  return Math.max(y + below, layBus(marks, { bus, firstRow: 0, from: null }, hung.at, width, limit + LINE_HEIGHT, later));
}

function hangings(x0: number, end: number, y: number, below: number): readonly { readonly at: Point; readonly way: readonly Point[] }[] {
  const straight: Point = [end + 8, y];
  const back: Point = [x0 + 36, y + below + 4];
  return [
    { at: straight, way: [[end, y], straight] },
    { at: back, way: [[end, y], [end, back[1]], back] },
  ];
}

/** Whether each run below a bus at `x` has room for its tags and some words. */
function fitsAcross(bus: Bus, x: number, width: number): boolean {
  return bus.rows.every((row) => {
    const needed = BREAKER_END + TAG_GAP + gathered(row.way).reduce((sum, one) => sum + tagWidth(one) + TAG_GAP, 0);
    return x + Math.max(needed, 8 + widthOf(row.breaker) + 10) + SYMBOL_WIDTH + 6 + END_WORDS <= width;
  });
}

/** The most height a bus with all below it takes, by the room under its own rows. */
function busHeight(bus: Bus, below: (row: Row) => number, beside: boolean): number {
  const hung = (row: Row) => (row.end.is === "panel" ? 4 + busHeight(row.end.bus, mostBelow, false) : 0);
  const rows = bus.rows.reduce((sum, row) => sum + ABOVE + below(row) + hung(row), 0);
  return (1 + bus.words.length) * LINE_HEIGHT + 4 + rows + (bus.earth === null || beside ? 0 : EARTH.height);
}

/** An arrowhead where a line goes on elsewhere. */
function matchMark([x, y]: Point, towards: "right" | "down", weight: Weight): Mark {
  const points: readonly Point[] =
    towards === "right"
      ? [
          [x, y - 8],
          [x + 8, y],
          [x, y + 8],
        ]
      : [
          [x - 8, y],
          [x, y + 8],
          [x + 8, y],
        ];
  return path(points, weight);
}

function legend(height: number, width: number): readonly Mark[] {
  const y = height - LEGEND + 8;
  return [
    line([0, y], [width, y], "thin"),
    line([0, y + 14], [36, y + 14], "thin"),
    text([44, y + 19], "existing (E)"),
    line([150, y + 14], [186, y + 14], "heavy"),
    text([194, y + 19], "new"),
    text([248, y + 19], "Not to scale. W wiring, J box: see schedules"),
    text([0, y + 19 + LINE_HEIGHT], "Symbols generally per IEEE 315. kA interrupting. N neutral. G ground wire or bar"),
  ];
}

function describe(bus: Bus, part: number): string {
  const ends = (of: Bus): string =>
    of.rows
      .map(
        (row) =>
          `${row.breaker} by ${row.way.map((w) => w.tag).join(", ")} to ${row.end.is === "panel" ? `${row.end.bus.name} (${ends(row.end.bus)})` : row.end.words[0]}`,
      )
      .join("; ");
  return `One-line diagram, part ${part}: ${bus.name}: ${ends(bus)}`;
}
