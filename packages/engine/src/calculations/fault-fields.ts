import * as z from "zod";
import * as field from "./fields.js";

/** What drives a fault. */
export const source = z
  .discriminatedUnion("kind", [
    z.strictObject({
      kind: z.literal("transformer"),
      kVA: field.factor("rating, kVA", 10_000),
      percentZ: field.percent("nameplate impedance").max(50),
      xOverR: field.factor("X/R ratio", 100).optional(),
      tolerancePercent: field.percent("making tolerance taken off the impedance", "or-zero").max(50).optional(),
      primary: z
        .strictObject({
          amperes: field.amperes("fault current on the high side"),
          volts: field.volts("high side"),
          xOverR: field.factor("X/R ratio", 100).optional(),
        })
        .optional()
        .describe("primary behind the transformer, infinite when left out"),
    }),
    z.strictObject({
      kind: z.literal("utility"),
      amperes: field.amperes("fault current stated by the utility"),
      lineToNeutralAmperes: field.amperes("the same line to neutral").optional(),
      xOverR: field.factor("X/R ratio", 100).optional(),
    }),
  ])
  .describe("a transformer by its nameplate, or the fault current that the utility states");

/** What the fault current runs through. */
export const segments = field.list(
  z.strictObject({
    name: field.text("what the point at its end is called"),
    material: field.material,
    conduit: field.conduit,
    feet: field.feet("length"),
    celsius: field.celsius("conductor temperature: 25 cold, 75 loaded"),
    parallel: field.count("sets in parallel, 1 when left out").optional(),
    hot: field.size,
    neutral: field.size.nullable(),
    grounding: z
      .strictObject({ size: field.size, material: field.material, parallel: field.count("in parallel, 1 when left out").optional() })
      .nullable()
      .describe("equipment grounding conductor, null where there is none"),
    supplySide: field.yesNo("whether it lies ahead of the main bonding jumper"),
  }),
  "stretches in order from the source",
  0,
);

export const EXAMPLE: { source: z.input<typeof source>; volts: number; segments: z.input<typeof segments> } = {
  source: { kind: "transformer", kVA: 25, percentZ: 1.6 },
  volts: 240,
  segments: [
    { name: "panel", material: "aluminum", conduit: "PVC", feet: 60, celsius: 25, hot: "4/0", neutral: "2/0", grounding: null, supplySide: true },
    {
      name: "outlet",
      material: "copper",
      conduit: "PVC",
      feet: 80,
      celsius: 25,
      hot: "6",
      neutral: "6",
      grounding: { size: "10", material: "copper" },
      supplySide: false,
    },
  ],
};
