import { z } from "zod";
import { calendarDate, id, money, sourced, text } from "./field.js";

const head = { id, says: text.describe("what the fee schedule calls it") };
const serves = z.array(id).min(1).max(20).optional().describe("only outlets of these kinds, as rv-50; all when left out");

const flat = z.strictObject({ ...head, kind: z.literal("flat"), amount: money, only_trench: z.boolean().default(false), ...sourced });
const perCircuit = z.strictObject({
  ...head,
  kind: z.literal("per-circuit"),
  bands: z
    .array(z.strictObject({ to: z.number().min(1).max(2000).optional().describe("amperes, this many included; left out in the last band"), amount: money }))
    .min(1)
    .max(20),
  feeders: z.boolean().default(true).describe("new feeders count as circuits"),
  ...sourced,
});
const perOpening = z.strictObject({
  ...head,
  kind: z.literal("per-opening"),
  amount: money,
  free: z.number().int().min(0).max(100).default(0).describe("openings that another fee covers"),
  serves,
  ...sourced,
});
const surcharge = z.strictObject({
  ...head,
  kind: z.literal("surcharge"),
  percent: z.number().min(0).max(100),
  of: z.array(id).min(1).max(20).describe("ids of the fees it is taken of, each above it in the list"),
  least: money.optional(),
  ...sourced,
});
const waiver = z.strictObject({
  ...head,
  kind: z.literal("waiver"),
  percent: z.number().min(0).max(100),
  of: z.array(id).min(1).max(20).describe("ids of the fees it lowers, each above it in the list"),
  until: calendarDate.describe("last day on which it holds"),
  ...sourced,
});
const contingent = z.strictObject({ ...head, kind: z.literal("contingent"), amount: money, when: text, ...sourced });

export const fee = z.discriminatedUnion("kind", [flat, perCircuit, perOpening, surcharge, waiver, contingent]);
export type Fee = z.output<typeof fee>;
