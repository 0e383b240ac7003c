export const EDITIONS = ["2017", "2020", "2023", "2026"] as const;
/** An edition of NFPA 70: an identifier, not a date. */
export type Edition = (typeof EDITIONS)[number];

/** One statement for each edition; written out in full so that silence never means "unchanged". */
export type PerEdition<T> = Readonly<Record<Edition, T>>;

/** The same statement in all four editions. */
export function everyEdition<T>(value: T): PerEdition<T> {
  return { "2017": value, "2020": value, "2023": value, "2026": value };
}

/** The section of Article 220 with the 2026 move to Article 120 (suffix kept). */
export function article220(suffix: string, document2017 = suffix): PerEdition<string> {
  return { "2017": `220.${document2017}`, "2020": `220.${suffix}`, "2023": `220.${suffix}`, "2026": `120.${suffix}` };
}
