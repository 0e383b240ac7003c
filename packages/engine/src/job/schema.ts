import * as z from "zod";
import { EDITIONS } from "../basis/edition.js";
import { equipmentFields } from "./nameplate.js";
import { box, segment } from "./segment.js";
import { drop, dwelling, fault, LOAD_METHODS, managed, serviceConductors, serviceElectrode } from "./service-parts.js";
import { sitePlan } from "./site-plan.js";
import { written } from "./written-quantity.js";

const text = z.string().trim().min(1).max(400);
const id = z.string().regex(/^[a-z][a-z0-9-]{0,39}$/, "use small letters, digits and dashes, beginning with a letter");
const count = z.number().int().min(0).max(200);

export { CABLES, INSULATIONS, RACEWAYS } from "./segment.js";

const breaker = z.strictObject({
  rating: written("current", { min: 10, max: 400 }).optional().describe("left out, it is computed"),
  poles: z.union([z.literal(1), z.literal(2)]),
  spaces: z.array(count.min(1)).min(1).max(2).describe("of the panel, as numbered on its label"),
  gfci: z.boolean().describe("the breaker protects against ground faults"),
  listed_for_panel: z.boolean().optional().describe("the panel's own label names this kind of breaker"),
  interrupting_kA: z.number().min(1).max(200).optional().describe("printed on the breaker"),
});

/** What a circuit and a feeder have in common: protected at a panel, run along a route through boxes. */
const run = {
  id,
  name: text,
  breaker,
  terminals_75C: z.boolean().default(false).describe("what the conductors end on at both ends is listed and marked for 75 °C"),
  route: z.array(segment).min(1).max(20).describe("stretches in order from the panel"),
  boxes: z.array(box).max(20).default([]).describe("boxes along the route, each after the stretch it ends"),
};

const circuit = z.strictObject({
  ...run,
  ...equipmentFields,
  load: written("power", { max: 200000 }).optional().describe("load on the service, when it is not volts × amperes"),
  dedicated_use_note: text.optional().describe("printed beside the circuit"),
  cover_plate: z.enum(["weatherproof-in-use", "weatherproof-closed", "none"]).optional().describe("of an outlet outdoors"),
  stands_on: z
    .enum(["same-building", "post", "other-building"])
    .optional()
    .describe("what the outlet or equipment is fixed to: the building of its panel, a post or pad of its own, another building"),
  disconnect_there: z.boolean().optional().describe("a breaker or switch at the post or other building opens the circuit there"),
  listed_rv_power_outlet: z.boolean().default(false).describe("listed and labelled as an RV power outlet"),
});

const position = z.strictObject({
  space: count.min(1),
  poles: z.union([z.literal(1), z.literal(2)]).default(1),
  rating: written("current", { max: 400 }).optional(),
  serves: text.describe("what is on it"),
});

const panelFields = z.strictObject({
  id,
  name: text,
  bus: written("current", { min: 30, max: 600 }).describe("on the panel's label, not the main breaker"),
  main: written("current", { min: 30, max: 600 }).optional().describe("main breaker, where there is one in the panel"),
  spaces: z.number().int().min(2).max(84).describe("places for one-pole breakers"),
  terminal_temperature: z.union([z.literal(60), z.literal(75)]).default(75),
  working_space_clear: z.boolean().optional().describe("30 in wide, 36 in deep, 6 ft 6 in high, and free"),
  directory: z.array(position).max(84).default([]).describe("what is in the panel now"),
  existing_load: written("power", { max: 200000 }).optional().describe("a panel on a feeder: what it carries already, taken as even on both legs"),
  circuits: z.array(circuit).max(30).default([]).describe("what is to be added"),
});

const feederFields = z.strictObject({
  ...run,
  existing: z.boolean().default(false).describe("stands already: its sizes are given and it is checked, not bought"),
  building: z.enum(["same", "detached", "pedestal"]).describe("where the panel it feeds stands"),
  demand: z
    .enum(["sum", "rv-site"])
    .default("sum")
    .describe("sum: every load whole. rv-site: the outlets of one RV stand count once, by the largest, as a park counts a site"),
  disconnect: z.boolean().optional().describe("a disconnecting means stands at the fed building or panel"),
  electrode: z.boolean().optional().describe("a grounding electrode is or will be connected at a detached building"),
});

// Written out, since a declaration file cannot hold the inferred type of two schemas that contain one another.
export interface Panel extends z.output<typeof panelFields> {
  feeders: Feeder[];
}
export interface Feeder extends z.output<typeof feederFields> {
  panel: Panel;
}
interface WrittenPanel extends z.input<typeof panelFields> {
  feeders?: WrittenFeeder[];
}
interface WrittenFeeder extends z.input<typeof feederFields> {
  panel: WrittenPanel;
}

const panel: z.ZodType<Panel, WrittenPanel> = z.strictObject({
  ...panelFields.shape,
  get feeders(): z.ZodType<Feeder[], WrittenFeeder[] | undefined> {
    return z.array(feeder).max(12).default([]);
  },
});
const feeder: z.ZodType<Feeder, WrittenFeeder> = z.strictObject({
  ...feederFields.shape,
  get panel() {
    return panel;
  },
});

const existingLoads = z.strictObject({
  floor_area: written("area", { min: 50, max: 50000 }).describe("of the dwelling, outside dimensions"),
  small_appliance_circuits: z.number().int().min(2).max(20).default(2),
  laundry_circuits: z.number().int().min(0).max(5).default(1),
  appliances: z
    .array(z.strictObject({ name: text, load: written("power", { max: 100000 }), count: z.number().int().min(1).max(50).default(1) }))
    .max(60)
    .default([]),
  heating: z.strictObject({ name: text, load: written("power", { max: 200000 }) }).optional(),
  cooling: z.strictObject({ name: text, load: written("power", { max: 200000 }) }).optional(),
  heating_or_cooling_added: z.boolean().default(false).describe("this job adds heating or cooling"),
});

export const jobSchema = z.strictObject({
  format: z.literal("branchwork-job/1"),
  project: z.strictObject({
    title: text.describe("of the work, on every sheet"),
    owner: text.describe("of the house"),
    site: text.describe("address of the work"),
    parcel: text.optional().describe("number of the lot, where the office asks it"),
    scope: text.optional().describe("what is done, in a sentence or two"),
    intended_use: text.optional().describe("what it will be used for; zoning may ask"),
    preparer: z.strictObject({ name: text, role: text, phone: text.optional(), licence: text.optional() }),
  }),
  code: z.strictObject({ edition: z.enum(EDITIONS), confirmed_with_authority: z.boolean().default(false) }),
  service: z.strictObject({
    rating: written("current", { min: 30, max: 600 }).describe("of the service: the handle of the main breaker"),
    fault_current_kA: z.number().min(0.1).max(200).optional().describe("available at the service, as the utility says"),
    fault: fault.optional(),
    conductors: serviceConductors.optional(),
    electrode: serviceElectrode.optional(),
    load_method: z.enum(LOAD_METHODS).describe("how the load on the service is worked"),
    existing: existingLoads.optional().describe("for the method existing-dwelling: what stands in the house"),
    dwelling: dwelling.optional(),
    managed: managed.optional(),
    measured: z.strictObject({ peak: written("power", { max: 200000 }), basis: z.enum(["one-year", "thirty-day"]), from: text }).optional(),
    panel,
  }),
  site_plan: sitePlan.optional(),
  drop,
});

export type Job = z.output<typeof jobSchema>;
export type Circuit = z.output<typeof circuit>;
export type Segment = z.output<typeof segment>;
export type Box = z.output<typeof box>;
/** What a circuit and a feeder have in common. */
export type Run = Pick<Circuit, keyof typeof run>;
