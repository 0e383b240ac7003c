import { EDITIONS } from "@branchwork/engine";
import { z } from "zod";
import { amendment } from "./amendment-schema.js";
import { fee } from "./fee-schema.js";
import { calendarDate, id, looselySourced, named, sourced, text } from "./field.js";

export const STAGES = ["trench", "rough", "final"] as const;
export type Stage = (typeof STAGES)[number];
export const PLACES = ["indoors", "attic", "outdoors", "buried"] as const;

const intake = z.strictObject({
  mode: z.enum(["over-the-counter", "small-plan-set", "affidavit-and-schematic"]),
  sheets: z
    .array(z.strictObject({ ...named, asks: text, sheet: text.optional().describe("title of the sheet that answers it") }))
    .max(40)
    .describe("what is to be handed in; the sheets named come in this order, after cover and statements"),
  nothing_else: z.boolean().optional().describe("hand in the sheets named in the list alone, besides cover and statements"),
  sheet_size: z.enum(["letter", "tabloid", "arch-d", "a4", "a3"]),
  copies: z.number().int().min(0).max(12).describe("paper copies; 0 where only a file is taken"),
  title_block: z.array(text).max(30).default([]).describe("fields asked on every sheet"),
  stamp_area: z
    .strictObject({
      width_in: z.number().min(0).max(20),
      height_in: z.number().min(0).max(20),
      where: text,
      sheets: z.array(text).min(1).max(40).optional().describe("titles of the sheets that keep it clear; site plan and one-line diagram when left out"),
    })
    .optional(),
  file_rules: text.optional(),
  ...sourced,
});

const worker = z.strictObject({
  ...named,
  who: z.enum(["owner", "owner-family", "licensed-electrician", "other"]),
  may: z.boolean(),
  says: text.describe("what they may do and under which limits"),
  ...sourced,
});

const statement = z.strictObject({
  ...named,
  title: text,
  says: z.string().trim().min(1).max(4000).describe("the exact words"),
  initials: z.boolean().optional(),
  notary: z.boolean().optional().describe("signed before a notary"),
  perjury: z.boolean().optional().describe("signed under penalty of perjury"),
  signed_by: z.enum(["owner", "preparer", "contractor"]).optional(),
  ...looselySourced,
});

const inspection = z.strictObject({
  id,
  name: text,
  stage: z.enum(["before", ...STAGES, "service"]),
  only_trench: z.boolean().default(false).describe("only where something is buried"),
  when: text.describe("what has to stand, and what may not be covered yet"),
  lead: text.describe("how long before, as: 1 working day"),
  present: text.optional().describe("who must be there"),
  call: text.describe("how to ask for it"),
  ...sourced,
});

const methodLimit = z.strictObject({
  ...named,
  places: z.array(z.enum(PLACES)).min(1).max(4),
  methods: z.array(text).min(1).max(20).describe("wiring methods that alone may be used there, as EMT"),
  reason: text,
  ...sourced,
});

/** What a note stands by: one of these, or the jurisdiction sheet alone. */
const note = z.strictObject({
  ...named,
  sheet: text.optional(),
  section: text.optional(),
  checklist: id.optional().describe("id of a checklist line"),
  device: id.optional().describe("kind of outlet, as rv-50"),
  says: text,
  ...sourced,
});

const change = z.discriminatedUnion("op", [
  z.strictObject({
    op: z.literal("replace"),
    at: text.describe("field of the extended file, as intake.copies or fees.permit.amount"),
    replaces: z.union([z.string(), z.number(), z.boolean()]).describe("what stands there now"),
    value: z.union([z.string(), z.number(), z.boolean()]),
    reason: text,
    ...sourced,
  }),
  z.strictObject({ op: z.literal("remove"), at: text.describe("entry or group of the extended file, as fees.permit or zoning"), reason: text, ...sourced }),
]);
export type Change = z.output<typeof change>;

const contact = { name: text, phone: text, hours: text.optional(), address: text.optional(), web: text.optional() };

const list = <T extends z.ZodType>(of: T, most: number) => z.array(of).max(most).default([]);

/** What one jurisdiction asks for beyond, or instead of, the adopted code. */
export const overlaySchema = z.strictObject({
  format: z.literal("branchwork-overlay/1"),
  id,
  name: text,
  extends: id.optional().describe("name, without .yaml, of the one file in the same folder that this adds to"),
  edition: z.enum(EDITIONS, { error: `write one of ${EDITIONS.map((e) => `"${e}"`).join(", ")}, in quotation marks` }).optional(),
  adoption: z
    .strictObject({ from: calendarDate, governs: z.enum(["permit-application", "permit-issue", "installation"]), says: text.optional(), ...sourced })
    .optional()
    .describe("from when the edition is in force, and by which day it is chosen"),
  checked_on: calendarDate.describe("day on which somebody last compared this file with the jurisdiction's own words"),
  changes: list(change, 100).describe("what is otherwise here than in the extended file"),
  intake: intake.optional(),
  who_may_work: list(worker, 20),
  proofs: list(z.strictObject({ ...named, says: text, ...sourced }), 20),
  notes: list(note, 100),
  checklist: list(z.strictObject({ ...named, stage: z.enum(STAGES), section: text, look: text, show: text.optional(), ...looselySourced }), 100),
  amendments: list(amendment, 100),
  wiring_methods: list(methodLimit, 20),
  riser: z
    .strictObject({ methods: z.array(text).min(1).max(20), reason: text, ...sourced })
    .optional()
    .describe("methods that alone may come out of the ground"),
  warning_ribbon: z.strictObject({ says: text, ...sourced }).optional(),
  load_calculation: z.strictObject({ methods: z.array(text).min(1).max(10), reason: text, ...sourced }).optional(),
  statements: list(statement, 30),
  fees: list(fee, 40),
  inspections: list(inspection, 20),
  corrections: z
    .strictObject({ within_days: z.number().int().min(1).max(400), counted: z.enum(["calendar", "working"]), says: text.optional(), ...sourced })
    .optional(),
  expiry: list(
    z.strictObject({ ...named, after_days: z.number().int().min(1).max(1500), from: text.describe("as: issue, last inspection"), says: text, ...sourced }),
    10,
  ),
  reinspection: list(z.strictObject({ ...named, says: text, ...sourced }), 20),
  zoning: z.strictObject({ says: text, intended_use: text.optional().describe("sentence the owner signs as to use"), ...sourced }).optional(),
  contacts: z
    .array(z.strictObject({ ...named, ...contact, ...looselySourced }))
    .max(20)
    .optional(),
  utility: z.strictObject({ ...contact, says: text.optional(), ...sourced }).optional(),
  one_call: z.strictObject({ ...contact, wait: text.describe("how long before digging"), ...sourced }).optional(),
});

export type Overlay = z.output<typeof overlaySchema>;
