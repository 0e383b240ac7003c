import type { Station, StationSymbol } from "./graph.js";
import { LINE_HEIGHT, wrap } from "./lettering.js";

/** Letter, portrait, inside the margins and above the title block; in points. */
export const PAGE = { width: 522, height: 572 } as const;
const LEFT = 62;
const TEXT_LEFT = 118;
const GAP = 12;
const LEGEND_HEIGHT = 3 * LINE_HEIGHT + 14;

/** Height that each symbol takes in the chain. */
const HEIGHTS: Record<StationSymbol, number> = {
  utility: 30,
  meter: 34,
  main: 34,
  bus: 16,
  breaker: 34,
  conductors: 38,
  box: 26,
  outlet: 30,
  equipment: 30,
  ground: 24,
  continued: 24,
};

export interface Placed {
  readonly symbol: StationSymbol;
  readonly fresh: boolean;
  readonly x: number;
  readonly top: number;
  readonly symbolHeight: number;
  readonly bottom: number;
  readonly text: { readonly x: number; readonly top: number; readonly lines: readonly string[] };
}
export interface Scene {
  readonly alt: string;
  readonly placed: readonly Placed[];
  readonly legendTop: number;
}

/** Puts the chain on as many pages as it needs, top to bottom, so that no words or symbols meet. */
export function scenesOf(alt: string, chain: readonly Station[]): readonly Scene[] {
  const bottomLimit = PAGE.height - LEGEND_HEIGHT;
  const pages: Placed[][] = [];
  let page: Placed[] = [];
  let y = 0;
  const put = (station: Station) => {
    const lines = station.words.flatMap((words) => cut(wrap(words, PAGE.width - TEXT_LEFT)));
    const symbolHeight = HEIGHTS[station.symbol];
    const height = Math.max(symbolHeight, lines.length * LINE_HEIGHT);
    return { station, lines, symbolHeight, height };
  };
  const place = ({ station, lines, symbolHeight, height }: ReturnType<typeof put>) => {
    page.push({ symbol: station.symbol, fresh: station.fresh, x: LEFT, top: y, symbolHeight, bottom: y + height, text: { x: TEXT_LEFT, top: y, lines } });
    y += height + GAP;
  };
  const mark = (words: string, fresh: boolean) => put({ symbol: "continued", words: [words], fresh });
  const reserve = HEIGHTS.continued + GAP;
  for (const [index, station] of chain.entries()) {
    const measured = put(station);
    const room = index === chain.length - 1 ? bottomLimit : bottomLimit - reserve;
    if (page.length > 0 && y + measured.height > room) {
      place(mark(`Match line ${pages.length + 1}: continued`, station.fresh));
      pages.push(page);
      page = [];
      y = 0;
      place(mark(`Match line ${pages.length}: from the part before`, station.fresh));
    }
    place(measured);
  }
  pages.push(page);
  return pages.map((placed, index) => ({ alt: pages.length === 1 ? alt : `${alt}, part ${index + 1}`, placed, legendTop: PAGE.height - LEGEND_HEIGHT }));
}

const MOST_LINES = 4;

/** A drawing has no room for a name of many lines; the schedules print it whole. */
function cut(lines: readonly string[]): readonly string[] {
  return lines.length <= MOST_LINES ? lines : [...lines.slice(0, MOST_LINES - 1), "… (in full in the schedules)"];
}
