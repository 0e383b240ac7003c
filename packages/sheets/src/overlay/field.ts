import { z } from "zod";

export const text = z.string().trim().min(1).max(600);
export const id = z.string().regex(/^[a-z][a-z0-9-]{0,59}$/, "use small letters, digits and dashes, beginning with a letter");

export const calendarDate = z.string().regex(/^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/, 'write the date as "2026-01-31"');

export const money = z
  .number()
  .min(0)
  .max(100_000)
  .refine((amount) => /^\d+(\.\d{1,2})?$/.test(String(amount)), "write dollars with at most two decimals")
  .describe("US dollars");

const checkedOn = calendarDate
  .optional()
  .describe("day on which this was last compared with the jurisdiction's own words; the file's checked_on when left out");

/** Where a rule of the jurisdiction stands, and when somebody last looked. */
export const sourced = { citation: text.describe("where the jurisdiction says so"), checked_on: checkedOn };

/** The same for what may stand without a citation; left out, the print says so. */
export const looselySourced = { citation: text.optional(), checked_on: checkedOn };

/** A name to address an entry by from a file that extends this one. */
export const named = { id: id.optional() };
