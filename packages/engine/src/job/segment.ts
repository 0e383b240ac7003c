import * as z from "zod";
import { INSULATIONS } from "../tables/insulation-rating.js";
import { SIZES } from "../tables/size.js";
import { written, writtenTemperature } from "./written-quantity.js";

export { INSULATIONS };
export const RACEWAYS = ["EMT", "ENT", "PVC-40", "PVC-80", "RMC", "IMC", "LFNC-A", "LFNC-B", "LFMC", "FMC"] as const;
export const CABLES = ["NM-B", "UF-B"] as const;
/** What takes up settlement and frost where a stretch comes out of the ground. */
export const EARTH_MOVEMENT = ["expansion-fitting", "slack-loop", "flexible-connection", "ground-still", "nothing"] as const;
export const SEGMENT_TRADE_SIZES = ["1/2", "3/4", "1", "1-1/4", "1-1/2", "2", "2-1/2", "3", "3-1/2", "4"] as const;

const text = z.string().trim().min(1).max(400);
const count = z.number().int().min(0).max(200);
const size = z.enum(SIZES);
const depth = (max: number) => written("depth", { max });

const elbow = z.strictObject({
  kind: z.enum(["body", "swept"]).describe("body: a conduit body such as an LB. swept: a bend with a radius"),
  radius: depth(120).optional().describe("swept: to the centre line; the least lawful one when left out"),
  from_wall: depth(2400).describe("straight raceway between the turn and the wall or enclosure the conductors are fed through"),
});

/** How the conductors are drawn in: decides tension, sidewall pressure and the warning of a hard pull, none of them a rule of the code. */
const pull = z.strictObject({
  from: z.enum(["start", "end"]).optional().describe("end of the route they are pulled out at; the easier of both when left out"),
  grip: z.enum(["basket", "eye"]).optional().describe("a basket grip over the jackets, taken when left out, or an eye on the conductors"),
  friction: z.number().min(0.1).max(1).optional().describe("0.5 dry, taken when left out; 0.35 with lubricant"),
  elbows: z.array(elbow).max(12).optional().describe("turns that are tight or near a wall"),
});

export const segment = z
  .strictObject({
    name: text.describe("what this stretch is called on the drawings"),
    place: z.enum(["indoors", "attic", "outdoors", "buried"]),
    method: z.enum([...CABLES, ...RACEWAYS]),
    length: written("length", { max: 5000 }).describe("one-way length with its rises and drops"),
    conductors: z
      .strictObject({
        size: size.optional(),
        insulation: z.enum(INSULATIONS).default("THWN-2"),
        material: z.enum(["copper", "aluminum"]).default("copper"),
        stranding: z.enum(["concentric", "compact"]).optional().describe("compact: most aluminum building wire; concentric when left out, which fills more"),
        grounding: size.optional(),
        neutral: size.optional().describe("of a feeder whose neutral is not of the size of its hots, which is taken when left out"),
      })
      .prefault({})
      .describe("leave a size out to have it computed"),
    sets: z.number().int().min(1).max(6).optional().describe("equal sets of conductors in parallel, each in a raceway of its own; one when left out"),
    trade_size: z.enum(SEGMENT_TRADE_SIZES).optional(),
    ambient: writtenTemperature.optional().describe("hottest air around the conductors"),
    rooftop_height: depth(120).optional().describe("in the sun over a roof: from the roof to the bottom of the raceway or cable"),
    neutral_nonlinear: z.boolean().optional().describe("electronic loads whose harmonics the neutral carries: it is counted"),
    temperature_span: z
      .strictObject({ coldest: writtenTemperature, hottest: writtenTemperature, in_sun: z.boolean().optional() })
      .refine(({ coldest, hottest }) => hottest >= coldest, { error: "the hottest is below the coldest", path: ["hottest"] })
      .optional()
      .describe("air over the year, for the movement of PVC"),
    expansion_travel: depth(24)
      .refine((inches) => inches > 0, { error: "a fitting moves more than 0 in" })
      .optional()
      .describe("of one expansion fitting set in this stretch"),
    bends: z.array(z.number().int().min(1).max(180)).max(20).default([]).describe("degrees of each bend between two pull points"),
    bend_radius: depth(240)
      .refine((inches) => inches > 0, { error: "a bend has a radius" })
      .optional()
      .describe("of the tightest bend, to the centre line"),
    rise: written("length", { min: -500, max: 500 }).optional().describe("climb from its start to its end, less than 0 going down"),
    pull: pull.optional().describe("of the pull that begins with this stretch"),
    others: z
      .strictObject({ current_carrying: count, area_in2: z.number().min(0).max(20).default(0) })
      .optional()
      .describe("conductors of other circuits in the same raceway"),
    cover: depth(120).optional().describe("buried: from the top of the raceway or cable to finished grade"),
    over: z.enum(["general", "under-concrete-2in", "under-building", "under-slab-4in", "under-street", "under-dwelling-driveway"]).default("general"),
    earth_movement: z
      .enum(EARTH_MOVEMENT)
      .optional()
      .describe(
        "outdoors, up out of the ground: what gives when the ground settles or heaves. slack-loop: an S of buried cable. ground-still: the authority takes the ground as not moving. Left out, it is asked on site",
      ),
    exposed_to_damage: z.boolean().default(false),
  })
  .refine(({ rise, length }) => Math.abs(rise ?? 0) <= length, { error: "a stretch cannot climb more than its length", path: ["rise"] });

const entry = z.strictObject({
  of: z.enum(["before", "after", "other"]).describe("the stretch that ends here, the one that goes on, or a raceway of another circuit"),
  wall: z.enum(["left", "right", "top", "bottom", "back"]),
  row: z.number().int().min(1).max(9).optional().describe("rows of one wall are counted apart"),
  trade_size: z.enum(SEGMENT_TRADE_SIZES).optional().describe("of another circuit's raceway; 1 when left out"),
});

export const box = z.strictObject({
  name: text,
  after: text.describe("name of the segment that ends at this box"),
  kind: z.enum(["box", "conduit-body"]).optional(),
  volume: written("volume", { max: 2000 }),
  wet_location: z.boolean().default(false).describe("marked for wet locations"),
  device: z.boolean().default(false).describe("holds the receptacle"),
  clamps: z.boolean().default(false).describe("has clamps inside"),
  spliced: z.boolean().optional().describe("conductors are joined in it, where they could also go through whole"),
  entries: z.array(entry).max(16).optional().describe("4 AWG and larger: where the raceways enter; an angle pull is taken when left out"),
  width: depth(120).optional().describe("inside, left to right"),
  height: depth(120).optional().describe("inside, top to bottom"),
  depth: depth(60).optional().describe("inside, back to cover"),
  entry_distance: depth(120).optional().describe("between the two entries of one pull, edge to edge"),
});
