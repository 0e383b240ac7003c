import * as z from "zod";
import { written } from "./written-quantity.js";

const text = z.string().trim().min(1).max(400);
const id = z.string().regex(/^[a-z][a-z0-9-]{0,39}$/, "use small letters, digits and dashes, beginning with a letter");

/** Feet from an origin of the preparer's choice; to the right and up the page are positive. */
const coordinate = written("length", { min: -5000, max: 5000 });
const place = z.tuple([coordinate, coordinate]).describe("across, then up, each with its unit");

const isClosedOnItself = (points: readonly (readonly [number, number])[]) => {
  const [first, last] = [points[0], points.at(-1)];
  return first !== undefined && last !== undefined && first[0] === last[0] && first[1] === last[1];
};
/** Twice the area, by the shoelace rule. */
const doubledArea = (points: readonly (readonly [number, number])[]) =>
  Math.abs(
    points.reduce((sum, p, i) => {
      const next = points[(i + 1) % points.length] ?? p;
      return sum + p[0] * next[1] - next[0] * p[1];
    }, 0),
  );
const polygon = z
  .array(place)
  .min(3)
  .max(60)
  .refine((points) => !isClosedOnItself(points), "the last corner joins the first by itself: leave the repeated corner out")
  .refine((points) => doubledArea(points) > 1, "these corners lie on one line or enclose nothing");
const polyline = z
  .array(place)
  .min(2)
  .max(60)
  .refine((points) => points.some((p) => p[0] !== points[0]?.[0] || p[1] !== points[0]?.[1]), "a way needs two different places");

export const OUTLINE_KINDS = ["house", "garage", "drive", "pool", "other"] as const;
export const SITE_POINT_KINDS = ["meter", "panel", "outlet", "gas", "water", "septic", "pole", "well", "hydrant", "disconnect"] as const;

/** The site in plan, measured by the preparer; not a survey. */
export const sitePlan = z.strictObject({
  lot: polygon.describe("corners of the lot, in order"),
  outlines: z
    .array(z.strictObject({ kind: z.enum(OUTLINE_KINDS), name: text, points: polygon }))
    .max(40)
    .default([]),
  points: z
    .array(z.strictObject({ kind: z.enum(SITE_POINT_KINDS), name: text, at: place }))
    .max(40)
    .default([]),
  routes: z
    .array(
      z.strictObject({
        circuit: id.describe("id of the circuit that runs here"),
        segment: text.describe("name of the circuit's segment"),
        in_trench: z.boolean().describe("buried along this way"),
        points: polyline,
        rises: written("length", { max: 500 }).optional().describe("rises and drops together, which a plan cannot show"),
      }),
    )
    .max(60)
    .default([]),
  overhead: z.array(polyline).max(20).default([]).describe("overhead lines"),
  north: z.number().min(-360).max(360).describe("degrees clockwise from the top of the page to true north"),
  scale_note: text.optional().describe("how the places were measured"),
});

export type SitePlan = z.output<typeof sitePlan>;
