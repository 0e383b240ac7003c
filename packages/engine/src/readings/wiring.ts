/**
 * What reaches an outlet besides the equipment ground. four-wire: two hots and neutral (14-50R, 14-30R, a range); one-hot: a hot and
 * neutral (TT-30R, 5-15R); two-hot: two hots, no neutral (6-50R, supply equipment, a water heater).
 */
export type WiringShape = "four-wire" | "one-hot" | "two-hot";
export type Conductor = "hot1" | "hot2" | "neutral" | "ground";
export type Terminal = "L1" | "L2" | "N" | "G";
export type ReadingName = "L1-N" | "L2-N" | "L1-L2" | "L1-G" | "L2-G" | "N-G";

/** The readings of each outlet in the order they are taken; L1 is the one hot of a 125 V outlet. */
export const READINGS: Readonly<Record<WiringShape, readonly ReadingName[]>> = {
  "four-wire": ["L1-N", "L2-N", "L1-L2", "L1-G", "L2-G", "N-G"],
  "one-hot": ["L1-N", "L1-G", "N-G"],
  "two-hot": ["L1-L2", "L1-G", "L2-G"],
};

export const TERMINALS: Readonly<Record<ReadingName, readonly [Terminal, Terminal]>> = {
  "L1-N": ["L1", "N"],
  "L2-N": ["L2", "N"],
  "L1-L2": ["L1", "L2"],
  "L1-G": ["L1", "G"],
  "L2-G": ["L2", "G"],
  "N-G": ["N", "G"],
};

/** How a run is connected: where each conductor begins in the panel, on which terminal it lands, and what is wrong with it. */
export interface Wiring {
  readonly begins: Readonly<Partial<Record<Conductor, "leg-1" | "leg-2" | "neutral-bar" | "ground-bar">>>;
  readonly lands: Readonly<Partial<Record<Terminal, Conductor>>>;
  readonly open: readonly Conductor[];
  readonly addedOhms: Readonly<Partial<Record<Conductor, number>>>;
  readonly bondedAtOutlet: boolean;
}

const FAULTLESS = { open: [], addedOhms: {}, bondedAtOutlet: false } as const;

/** The right wiring of each shape. */
export const SOUND: Readonly<Record<WiringShape, Wiring>> = {
  "four-wire": {
    begins: { hot1: "leg-1", hot2: "leg-2", neutral: "neutral-bar", ground: "ground-bar" },
    lands: { L1: "hot1", L2: "hot2", N: "neutral", G: "ground" },
    ...FAULTLESS,
  },
  "one-hot": { begins: { hot1: "leg-1", neutral: "neutral-bar", ground: "ground-bar" }, lands: { L1: "hot1", N: "neutral", G: "ground" }, ...FAULTLESS },
  "two-hot": { begins: { hot1: "leg-1", hot2: "leg-2", ground: "ground-bar" }, lands: { L1: "hot1", L2: "hot2", G: "ground" }, ...FAULTLESS },
};

/** The wiring with the conductors of two terminals changed over. */
export function swapped(wiring: Wiring, a: Terminal, b: Terminal): Wiring {
  return { ...wiring, lands: { ...wiring.lands, [a]: wiring.lands[b], [b]: wiring.lands[a] } };
}

/** The wiring with one more conductor broken. */
export function opened(wiring: Wiring, ...conductors: readonly Conductor[]): Wiring {
  return { ...wiring, open: [...wiring.open, ...conductors] };
}
