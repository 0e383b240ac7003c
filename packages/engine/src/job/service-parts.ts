import * as z from "zod";
import { DROP_METHODS } from "../sizing/drop-method.js";
import { CONDUIT_MATERIALS } from "../tables/impedance.js";
import { SIZES } from "../tables/size.js";
import { written, writtenTemperature } from "./written-quantity.js";

const text = z.string().trim().min(1).max(400);
const size = z.enum(SIZES);
const material = z.enum(["copper", "aluminum"]);
const sets = z.number().int().min(1).max(12).default(1).describe("conductors in parallel on each leg");
const power = written("power", { max: 200000 });
const many = z.number().int().min(1).max(50).default(1);

/** How the load of the service is got. The last two are of the whole house, for a new dwelling or one counted anew. */
export const LOAD_METHODS = ["existing-dwelling", "measured-demand", "standard", "optional"] as const;

/** The loads of the whole house as it stands, each by its kind, for the standard and the optional method. */
export const dwelling = z.strictObject({
  floor_area: written("area", { min: 50, max: 50000 }),
  small_appliance_circuits: z.number().int().min(2).max(20).default(2),
  laundry_circuits: z.number().int().min(0).max(5).default(1),
  appliances: z
    .array(
      z.strictObject({
        name: text,
        load: power,
        count: many,
        motor: z.boolean().default(false).describe("a motor, so that it may be the largest"),
        neutral: z.boolean().default(true).describe("connected between a hot and the neutral"),
      }),
    )
    .max(60)
    .default([])
    .describe("fastened in place or on a circuit of their own; not those with a list of their own below"),
  cooking: z
    .array(z.strictObject({ name: text, load: power, count: many }))
    .max(20)
    .default([])
    .describe("ranges, ovens, cooktops"),
  dryers: z
    .array(z.strictObject({ name: text, load: power, count: many }))
    .max(20)
    .default([]),
  ev: z
    .array(z.strictObject({ name: text, load: power.optional(), count: many }))
    .max(20)
    .default([])
    .describe("EV supply equipment there already"),
  climate: z
    .array(
      z.strictObject({
        name: text,
        kind: z.enum(["cooling", "heat-pump", "space-heating", "thermal-storage"]),
        load: power,
        supplement: power.optional().describe("a heat pump's electric heat"),
        interlocked: z.boolean().default(false).describe("heat pump and its electric heat cannot run together"),
        controls: z.number().int().min(1).max(50).default(1).describe("separately controlled units of space heating"),
      }),
    )
    .max(20)
    .default([]),
});

/** New loads held to a current by an energy management system. */
export const managed = z.strictObject({
  setpoint: written("current", { min: 1, max: 600 }).describe("current the system lets all new loads together draw, at 240 V"),
  citation: text.describe("what shows it: listing, instructions, how the setpoint is guarded"),
});

/** What feeds a fault: the utility's figure, or its transformer and what runs from it to the service panel; and the least it may be. */
export const fault = z.strictObject({
  least_kA: z
    .number()
    .min(0.05)
    .max(200)
    .optional()
    .describe("least available to neutral at the service panel, as the utility says: what has to trip a breaker"),
  loop_ohms: z.number().min(0.001).max(5).optional().describe("hot to neutral at the service panel, measured: by a loop meter, or volts lost by amperes drawn"),
  utility: z
    .strictObject({
      kA: z.number().min(0.1).max(200).describe("line to line, at the service panel"),
      line_to_neutral_kA: z.number().min(0.1).max(200).optional(),
      x_over_r: z.number().min(0.01).max(50).optional(),
    })
    .optional(),
  transformer: z
    .strictObject({
      kva: z.number().min(1).max(5000),
      percent_z: z.number().min(0.1).max(20),
      x_over_r: z.number().min(0.01).max(50).optional(),
      conductors: z
        .array(
          z.strictObject({
            name: text.default("to the service"),
            size,
            neutral: size.optional().describe("the size of the hots when left out"),
            material: material.default("aluminum"),
            sets,
            length: written("length", { max: 5000 }),
            raceway: z.enum(CONDUIT_MATERIALS).default("PVC").describe("PVC also for a cable or overhead conductors"),
          }),
        )
        .max(5)
        .default([])
        .describe("from the transformer to the service panel, in order"),
    })
    .optional(),
});

/** Conductors that carry the whole load of the dwelling, and the grounding electrode conductor. */
export const serviceConductors = z.strictObject({ size, material: material.default("aluminum"), sets });
export const serviceElectrode = z.strictObject({
  electrodes: z
    .array(z.enum(["rod", "pipe", "plate", "concrete-encased", "ring", "water-pipe", "structural-metal"]))
    .min(1)
    .max(7),
  material: material.default("copper"),
  size: size.optional().describe("the grounding electrode conductor as it stands"),
});

export const drop = z
  .strictObject({
    method: z.enum(DROP_METHODS).default("dc-resistance"),
    limit_percent: z.number().min(0.5).max(20).default(3).describe("for one run"),
    total_percent: z.number().min(0.5).max(30).default(5).describe("from the service to the end"),
    required: z.boolean().default(false).describe("the jurisdiction makes the limits a rule"),
    power_factor: z.number().min(0.1).max(1).optional().describe("of the load, lagging; for the ac methods"),
    conductor_temperature: writtenTemperature.optional().describe("at which resistance is taken; 75 °C when left out; not for K"),
  })
  .prefault({});
