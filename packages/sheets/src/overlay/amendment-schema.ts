import type { Circuit } from "@branchwork/engine";
import { z } from "zod";
import { id, named, sourced, text } from "./field.js";

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

const coverAmendment = z.strictObject({
  ...named,
  target: z.literal("cover"),
  row: z.enum(COVER_ROWS),
  replaces: z.number().min(0).max(120).describe("inches in the unamended table"),
  value: z.number().min(0).max(120).describe("inches asked for here"),
  reason: text,
  ...sourced,
});

const checkAmendment = z.strictObject({
  ...named,
  target: z.literal("check"),
  check: id,
  off: z
    .boolean()
    .refine(
      (off) => off,
      "every check is on already; to undo an amendment of the extended file, remove it under changes (op: remove, at: amendments. and its id or its check)",
    )
    .meta({ const: true }),
  reason: text,
  ...sourced,
});

const VERDICTS = ["fail", "caution", "needs-person"] as const;
const verdictAmendment = z.strictObject({
  ...named,
  target: z.literal("verdict"),
  check: id,
  replaces: z.enum(VERDICTS).describe("the verdict the check gives"),
  value: z.enum(VERDICTS).describe("the verdict it gives here"),
  reason: text,
  ...sourced,
});

const addedCheck = z.strictObject({
  ...named,
  target: z.literal("added-check"),
  check: id.describe("a new id"),
  title: text,
  look: text.describe("what somebody looks at"),
  only_trench: z.boolean().default(false).describe("only where something is buried"),
  reason: text,
  ...sourced,
});

/** Parameters of the unamended code: drop in per cent by informational notes, and their force. */
export const PARAMETERS = {
  "drop-limit-percent": 3,
  "drop-whole-way-percent": 5,
  "drop-force": "advisory",
} as const;
export type Parameter = keyof typeof PARAMETERS;

const percentAmendment = z.strictObject({
  ...named,
  target: z.literal("parameter"),
  parameter: z.enum(["drop-limit-percent", "drop-whole-way-percent"]),
  replaces: z.number(),
  value: z.number().min(0.5).max(20),
  reason: text,
  ...sourced,
});

const forceAmendment = z.strictObject({
  ...named,
  target: z.literal("drop-force"),
  replaces: z.enum(["advisory", "required"]),
  value: z.enum(["advisory", "required"]),
  reason: text,
  ...sourced,
});

const gfciRelief = z.strictObject({
  ...named,
  target: z.literal("gfci-rv-outlet"),
  replaces: z.literal("required"),
  value: z.literal("relieved").describe("not asked of an RV outlet that is listed and labelled as one"),
  reason: text,
  ...sourced,
});

export const amendment = z.discriminatedUnion("target", [
  coverAmendment,
  checkAmendment,
  verdictAmendment,
  addedCheck,
  percentAmendment,
  forceAmendment,
  gfciRelief,
]);
export type Amendment = z.output<typeof amendment>;

/** What an amendment changes, so that two of one target are seen. */
export function targetOf(a: Amendment): string {
  switch (a.target) {
    case "cover":
      return `cover ${a.row}`;
    case "check":
    case "verdict":
    case "added-check":
      return `check ${a.check}`;
    case "parameter":
      return a.parameter;
    default:
      return a.target;
  }
}
