/** Conductor sizes in ascending order of circular mils. A size is its name: "14" … "1", "1/0" … "4/0", then kcmil "250" … */
export const SIZES = [
  "18",
  "16",
  "14",
  "12",
  "10",
  "8",
  "6",
  "4",
  "3",
  "2",
  "1",
  "1/0",
  "2/0",
  "3/0",
  "4/0",
  "250",
  "300",
  "350",
  "400",
  "500",
  "600",
  "700",
  "750",
  "800",
  "900",
  "1000",
] as const;
export type Size = (typeof SIZES)[number];

/** Negative when `a` is the smaller conductor. */
export function compareSizes(a: Size, b: Size): number {
  return SIZES.indexOf(a) - SIZES.indexOf(b);
}

/** "6 AWG", "250 kcmil"; words for no size. */
export function printSize(size: Size | null): string {
  if (size === null) return "no size in the tables";
  return SIZES.indexOf(size) >= SIZES.indexOf("250") ? `${size} kcmil` : `${size} AWG`;
}
