import * as z from "zod";
import { hardPull } from "../sizing/hard-pull.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";
import { statedValue } from "./stated-value.js";

export const hardPullCalculation = calculation({
  name: "hard-pull",
  title: "Whether a pull will be hard",
  about: "A warning before anybody pulls: thick conductors through a tight elbow right after a wall, a full raceway, many bends, a jam. Advice, not a rule.",
  fields: {
    raceway: field.raceway,
    tradeSize: field.tradeSize,
    conductor: field.wound,
    areaIn2: field.squareInches("all conductors together"),
    count: field.count("all conductors, the small ones too"),
    elbows: field.list(
      z.discriminatedUnion("kind", [
        z.strictObject({ kind: z.literal("body"), fromWallIn: field.inches("straight raceway between the turn and the wall", "or-zero") }),
        z.strictObject({
          kind: z.literal("swept"),
          radiusIn: field.inches("radius to the centre line"),
          fromWallIn: field.inches("straight raceway between the turn and the wall", "or-zero"),
        }),
      ]),
      "turns of the raceway: a conduit body or a swept bend",
      0,
    ),
    totalDegrees: z.number().min(0).max(1440).describe("all bends together, degrees"),
    edition: field.edition,
  },
  example: {
    raceway: "PVC-40",
    tradeSize: "1",
    conductor: { size: "6", insulation: "THWN-2", count: 3 },
    areaIn2: 0.2,
    count: 4,
    elbows: [{ kind: "body", fromWallIn: 2 }],
    totalDegrees: 180,
    edition: "2023",
  },
  none: "The tables as entered lack the raceway or a conductor.",
  run: ({ areaIn2, ...given }) => hardPull({ ...given, area: statedValue(`${given.id}.area`, "Area of all conductors", areaIn2, "in2") }),
});
