/** Units in which places are typed. */
export const LENGTH_UNITS = ["ft", "m"] as const;
export type LengthUnit = (typeof LENGTH_UNITS)[number];

/** Feet in each unit that the reader of the job knows, by the international foot of 0.3048 m. */
const FEET: Readonly<Record<string, number>> = {
  ft: 1,
  feet: 1,
  foot: 1,
  "'": 1,
  in: 1 / 12,
  m: 1 / 0.3048,
  cm: 0.01 / 0.3048,
  mm: 0.001 / 0.3048,
};

const NUMERAL = /^(-?)(?:(\d+)-)?(\d+)\/(\d+)$|^(-?\d+(?:,\d{3})*(?:\.\d+)?)$/;

/** Feet of a length as people write it ("26 m", "12-1/2 ft"); null where it is none. The job's reader judges; this draws meanwhile. */
export function feetOf(written: unknown): number | null {
  if (typeof written !== "string") return null;
  const [, number = "", unit = ""] = /^\s*([-\d.,/]+)\s*(\S.*?)?\s*$/.exec(written) ?? [];
  const match = NUMERAL.exec(number);
  if (match === null || !Object.hasOwn(FEET, unit)) return null;
  if (match[5] !== undefined) return Number(match[5].replaceAll(",", "")) * FEET[unit]!;
  if (Number(match[4]) === 0) return null;
  const value = Number(match[2] ?? 0) + Number(match[3]) / Number(match[4]);
  return (match[1] === "" ? value : -value) * FEET[unit]!;
}

/** A number of feet in a unit, to the hundredth, without the unit. */
export const bareLength = (feet: number, unit: LengthUnit): string => String(Math.round((feet / FEET[unit]!) * 100) / 100 + 0);

/** A length that is shown and not written: to the tenth, as the printed plan has it. */
export const shownLength = (feet: number, unit: LengthUnit): string => `${Math.round((feet / FEET[unit]!) * 10) / 10} ${unit}`;

/** A number of feet as the job's file writes it. */
export const lengthText = (feet: number, unit: LengthUnit): string => `${bareLength(feet, unit)} ${unit}`;

/** What a move by hand is rounded to: half a foot, or a tenth of a metre. */
export const snapped = (feet: number, unit: LengthUnit): number => {
  const step = unit === "ft" ? 0.5 : 0.1 / 0.3048;
  return Math.round(feet / step) * step;
};

/** One press of an arrow key: a foot, or half a metre. */
export const STRIDE: Readonly<Record<LengthUnit, number>> = { ft: 1, m: 0.5 / 0.3048 };
