import { paragraph } from "./label-column.js";
import { LINE_HEIGHT } from "./lettering.js";
import { ASCENT, box, type Drawing, figure, fitted, line, type Mark, path, text } from "./marks.js";

export interface PanelPosition {
  /** The upper space where the breaker takes two, which are then this and this + 2. */
  readonly space: number;
  readonly poles: 1 | 2 | 3;
  readonly rating_A?: number;
  readonly serves: string;
  readonly fresh: boolean;
  /** Mark that other sheets use for a new breaker. */
  readonly tag?: string;
}
export interface PanelElevationInput {
  readonly title?: string;
  readonly name: string;
  readonly bus_A: number;
  readonly main_A?: number;
  /** Odd spaces at the left, even at the right, from the top. */
  readonly spaces: number;
  readonly positions: readonly PanelPosition[];
}

const WIDTH = 522;
const ROW = LINE_HEIGHT;
const BREAKER = 56;
const NUMBER = 26;
const HALF = WIDTH / 2;
const TOP = 8;
const MAIN = 34;
const ROWS_A_PAGE = 21;
const MOST_NOTES = 5;

/** The panel with its cover off, as many pages as its rows need: breakers existing and new, spaces free. */
export function drawPanelElevation(input: PanelElevationInput): readonly Drawing[] {
  const rows = Math.ceil(input.spaces / 2);
  const { seated, clashes } = seat(input);
  const pages = Math.max(1, Math.ceil(rows / ROWS_A_PAGE));
  const title = input.title ?? `Panel ${input.name}, front view`;
  const fresh = input.positions.filter((p) => p.fresh);
  return Array.from({ length: pages }, (_, page): Drawing => {
    const first = page * ROWS_A_PAGE;
    const last = Math.min(rows, first + ROWS_A_PAGE);
    const head = page === 0 ? MAIN + 8 : LINE_HEIGHT + 8;
    const rowsTop = TOP + head;
    const bottom = rowsTop + (last - first) * ROW + 6;
    const mainWords =
      input.main_A === undefined ? `no main breaker; bus ${figure(input.bus_A)} A (E)` : `MAIN ${figure(input.main_A)} A (E); bus ${figure(input.bus_A)} A`;
    const marks: Mark[] = [box(1, TOP - 6, WIDTH - 2, bottom - TOP + 6, "medium")];
    if (page === 0)
      marks.push(box(HALF - 150, TOP, 300, MAIN, "thin"), text([HALF, TOP + MAIN / 2 + ASCENT / 2], fitted(mainWords, 290), { anchor: "middle" }));
    else marks.push(text([HALF, TOP + ASCENT + 2], `spaces ${first * 2 + 1} and on`, { anchor: "middle" }));
    for (let row = first; row < last; row++) {
      const y = rowsTop + (row - first) * ROW;
      for (const space of [row * 2 + 1, row * 2 + 2]) {
        if (space > input.spaces) continue;
        const odd = space % 2 === 1;
        marks.push(text([odd ? HALF - 3 - BREAKER - 5 : HALF + 3 + BREAKER + 5, y + ROW / 2 + ASCENT / 2], `${space}`, { anchor: odd ? "end" : "start" }));
        if (!seated.some((s) => s.spaces.includes(space))) marks.push(...freeSpace(odd, y));
      }
    }
    for (const { position, spaces } of seated) {
      const here = spaces.filter((s) => Math.ceil(s / 2) > first && Math.ceil(s / 2) <= last);
      if (here.length > 0) marks.push(...breaker(position, here, rowsTop - first * ROW, spaces[0] !== here[0]));
    }
    const notes = [
      ...fresh.map(
        (p) =>
          `${p.tag ?? "NEW"}: new ${p.poles}-pole${p.rating_A === undefined ? "" : ` ${figure(p.rating_A)} A`} breaker, space ${spacesOf(p).join(", ")}: ${fitted(p.serves, 230)}`,
      ),
      ...clashes.map((c) => `NOT DRAWN, space ${spacesOf(c).join(", ")} taken or not there: ${fitted(c.serves, 200)}`),
    ];
    const shown = notes.length > MOST_NOTES ? [...notes.slice(0, MOST_NOTES - 1), `… and ${notes.length - MOST_NOTES + 1} more, in the panel schedule`] : notes;
    const keyTop = bottom + 8;
    const key: Mark[] = [
      box(1, keyTop + 2, 34, 13, "thin"),
      text([42, keyTop + ASCENT + 2], "existing (E)"),
      box(154, keyTop + 2, 34, 13, "heavy"),
      text([196, keyTop + ASCENT + 2], "new, with its mark", { bold: true }),
      ...freeSpace(true, keyTop - 1, 434),
      text([440, keyTop + ASCENT + 2], "free space"),
    ];
    const facts = paragraph(
      shown.map((s) => fitted(s, WIDTH - 4)),
      0,
      keyTop + LINE_HEIGHT + 6,
      WIDTH,
    );
    const part = pages === 1 ? title : `${title}, part ${page + 1} of ${pages}`;
    return {
      title: part,
      alt: `${part}: ${input.spaces} spaces; ${fresh.map((p) => `new ${p.poles}-pole breaker in space ${spacesOf(p).join(" and ")}`).join("; ") || "no new breaker"}.`,
      width: WIDTH,
      height: facts.bottom + 4,
      marks: [...marks, ...key, ...facts.marks],
    };
  });
}

export const spacesOf = (p: Pick<PanelPosition, "space" | "poles">): readonly number[] => Array.from({ length: p.poles }, (_, i) => p.space + 2 * i);

/** First come, first seated: a breaker whose space is taken or beyond the panel is left for the notes. */
function seat(input: PanelElevationInput) {
  const taken = new Set<number>();
  const seated: { position: PanelPosition; spaces: readonly number[] }[] = [];
  const clashes: PanelPosition[] = [];
  for (const position of input.positions) {
    const spaces = spacesOf(position);
    if (spaces.some((s) => taken.has(s) || s < 1 || s > input.spaces)) clashes.push(position);
    else {
      for (const s of spaces) taken.add(s);
      seated.push({ position, spaces });
    }
  }
  return { seated, clashes };
}

function freeSpace(odd: boolean, y: number, x = odd ? HALF - 3 : HALF + 3): readonly Mark[] {
  const [l, r] = odd ? [x - BREAKER, x] : [x, x + BREAKER];
  return [box(l + 2, y + 3, r - l - 4, ROW - 6, "fine", { dash: "setback" })];
}

function breaker(p: PanelPosition, spaces: readonly number[], top: number, goesOn: boolean): readonly Mark[] {
  const odd = spaces[0]! % 2 === 1;
  const y = top + (Math.ceil(spaces[0]! / 2) - 1) * ROW;
  const height = spaces.length * ROW;
  const [l, r] = odd ? [HALF - 3 - BREAKER, HALF - 3] : [HALF + 3, HALF + 3 + BREAKER];
  const inset = p.fresh ? 2 : 1;
  const middle = y + height / 2 + ASCENT / 2;
  const room = HALF - 3 - BREAKER - 5 - NUMBER - 8;
  const words = `${p.fresh ? `${p.tag ?? "NEW"} ` : ""}${p.serves}${goesOn ? " (goes on)" : ""}`;
  const outer = odd ? HALF - 3 - BREAKER - 5 - NUMBER : HALF + 3 + BREAKER + 5 + NUMBER;
  const tie = odd ? r - 7 : l + 7;
  return [
    box(l + inset, y + inset, r - l - 2 * inset, height - 2 * inset, p.fresh ? "heavy" : "thin"),
    // A handle at the bus side; the tie of a breaker of two poles joins its handles.
    ...spaces.map((_, i) => box(tie - 3, y + i * ROW + 5, 6, ROW - 10, "fine", { fill: "black" })),
    ...(spaces.length > 1 ? [line([tie, y + ROW / 2], [tie, y + height - ROW / 2], "medium")] : []),
    ...(p.rating_A === undefined
      ? []
      : [text([(l + r) / 2 + (odd ? -5 : 5), middle], fitted(`${figure(p.rating_A)} A`, BREAKER - 20), { anchor: "middle", bold: p.fresh })]),
    text([outer, middle], fitted(words, room), { anchor: odd ? "end" : "start", bold: p.fresh }),
    ...(spaces.length > 1
      ? [
          path(
            [
              [outer + (odd ? 3 : -3), y + 4],
              [outer + (odd ? 3 : -3), y + height - 4],
            ],
            p.fresh ? "medium" : "fine",
          ),
        ]
      : []),
  ];
}
