/** Feet to the inch: the engineer's scales, with 8 for 1/8 in = 1 ft, and their tenfold for great lots. */
export const FEET_PER_INCH = [8, 10, 20, 30, 40, 50, 60, 100, 200, 300, 400, 500, 600, 1000, 2000, 3000] as const;
export type FeetPerInch = (typeof FEET_PER_INCH)[number];

const POINTS_PER_INCH = 72;

/** The largest scale at which a site of so many feet fits a room of so many points; the smallest there is if none does. */
export function scaleFor(site: { width: number; height: number }, room: { width: number; height: number }): FeetPerInch {
  const fits = FEET_PER_INCH.find((s) => (site.width * POINTS_PER_INCH) / s <= room.width && (site.height * POINTS_PER_INCH) / s <= room.height);
  return fits ?? FEET_PER_INCH[FEET_PER_INCH.length - 1]!;
}

export const pointsPerFoot = (scale: FeetPerInch): number => POINTS_PER_INCH / scale;
export const scaleWords = (scale: FeetPerInch): string => (scale === 8 ? "1/8 in = 1 ft" : `1 in = ${scale} ft`);
