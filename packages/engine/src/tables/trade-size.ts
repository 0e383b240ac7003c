/** Trade sizes of raceways with the inches that rules multiply: a designation, not a measured diameter. Table 300.1(C). */
export const TRADE_INCHES = {
  "3/8": "0.375",
  "1/2": "0.5",
  "3/4": "0.75",
  "1": "1",
  "1-1/4": "1.25",
  "1-1/2": "1.5",
  "2": "2",
  "2-1/2": "2.5",
  "3": "3",
  "3-1/2": "3.5",
  "4": "4",
  "5": "5",
  "6": "6",
} as const;

/** Any trade size of Chapter 9 Table 4, 3/8 to 6. */
export type AnyTradeSize = keyof typeof TRADE_INCHES;

/** All of them, ascending. */
export const ALL_TRADE_SIZES = [
  "3/8",
  "1/2",
  "3/4",
  "1",
  "1-1/4",
  "1-1/2",
  "2",
  "2-1/2",
  "3",
  "3-1/2",
  "4",
  "5",
  "6",
] as const satisfies readonly AnyTradeSize[];
