import * as z from "zod";
import * as field from "./fields.js";

/** Heating and cooling of a dwelling, each by its kind. */
export const climate = field.list(
  z.discriminatedUnion("kind", [
    z.strictObject({ kind: z.literal("cooling"), va: field.voltAmperes("nameplate") }),
    z.strictObject({
      kind: z.literal("heat-pump"),
      va: field.voltAmperes("nameplate"),
      supplementVA: field.voltAmperes("supplemental electric heat", "or-zero"),
      interlocked: field.yesNo("whether the two cannot run together"),
    }),
    z.strictObject({
      kind: z.literal("space-heating"),
      va: field.voltAmperes("nameplate"),
      separatelyControlled: field.count("separately controlled units"),
    }),
    z.strictObject({ kind: z.literal("thermal-storage"), va: field.voltAmperes("nameplate") }),
  ]),
  "heating and cooling: cooling, heat-pump, space-heating or thermal-storage",
  0,
);
