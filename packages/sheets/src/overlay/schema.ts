import { type Circuit, EDITIONS } from "@branchwork/engine";
import { z } from "zod";

const text = z.string().trim().min(1).max(600);
const id = z.string().regex(/^[a-z][a-z0-9-]{0,59}$/, "use small letters, digits and dashes, beginning with a letter");

type CoverRow = Circuit["route"][number]["over"];
const COVER_ROW_NAMES = {
  general: true,
  "under-concrete-2in": true,
  "under-building": true,
  "under-slab-4in": true,
  "under-street": true,
  "under-dwelling-driveway": true,
} as const satisfies Record<CoverRow, true>;
const COVER_ROWS = Object.keys(COVER_ROW_NAMES) as [CoverRow, ...CoverRow[]];

export const STAGES = ["trench", "rough", "final"] as const;
export type Stage = (typeof STAGES)[number];

const coverAmendment = z.strictObject({
  target: z.literal("cover"),
  row: z.enum(COVER_ROWS),
  replaces: z.number().min(0).max(120).describe("inches in the unamended table"),
  value: z.number().min(0).max(120).describe("inches asked for here"),
  reason: text,
  citation: text,
});

const checkAmendment = z.strictObject({
  target: z.literal("check"),
  check: id,
  off: z.literal(true),
  reason: text,
  citation: text,
});

const calendarDate = z
  .string()
  .regex(/^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/, 'write the date as "2026-01-31"')
  .describe("day on which somebody last compared this file with the jurisdiction's own words");

/** What one jurisdiction asks for beyond, or instead of, the adopted code. */
export const overlaySchema = z.strictObject({
  format: z.literal("branchwork-overlay/1"),
  id,
  name: text,
  edition: z.enum(EDITIONS, { error: `write one of ${EDITIONS.map((e) => `"${e}"`).join(", ")}, in quotation marks` }).optional(),
  checked_on: calendarDate,
  notes: z.array(z.strictObject({ sheet: text.optional(), section: text.optional(), says: text, citation: text })).max(100),
  checklist: z.array(z.strictObject({ stage: z.enum(STAGES), section: text, look: text, show: text.optional() })).max(100),
  amendments: z.array(z.discriminatedUnion("target", [coverAmendment, checkAmendment])).max(100),
  statements: z.array(z.strictObject({ title: text, says: z.string().trim().min(1).max(4000), initials: z.boolean().optional() })).max(30),
  contacts: z
    .array(z.strictObject({ name: text, phone: text, hours: text.optional() }))
    .max(20)
    .optional(),
});

export type Overlay = z.output<typeof overlaySchema>;
