import * as z from "zod";
import { EQUIPMENT_KINDS, type EquipmentKind, RECEPTACLES, type Receptacle } from "../equipment/equipment.js";
import type { OutletPlace } from "../equipment/gfci-need.js";
import type { TransferMeans } from "../equipment/neutral-switching.js";
import { type Horsepower, MOTOR_CURRENT } from "../tables/motor-current.js";
import { written } from "./written-quantity.js";

const amperes = written("current", { min: 0.1, max: 400 });
const rating = written("current", { min: 10, max: 400 });
const watts = written("power", { min: 100, max: 80000 });
const keysOf = <K extends string>(record: Readonly<Record<K, unknown>>) => Object.keys(record) as [K, ...K[]];

const PLACES = [
  "indoors",
  "outdoors",
  "garage",
  "accessory-building",
  "basement",
  "crawl-space",
  "kitchen",
  "laundry",
  "bathroom",
] as const satisfies readonly OutletPlace[];
const TRANSFERS = [
  "interlock",
  "manual-switch",
  "manual-switch-with-neutral",
  "automatic",
  "automatic-with-neutral",
] as const satisfies readonly TransferMeans[];

const cooking = z.strictObject({ is: z.enum(["range", "cooktop", "oven"]), load: watts.describe("nameplate, VA at 240 V") });

const nameplate = z.strictObject({
  load: watts.optional().describe("range, dryer, water-heater, heat: nameplate. generator-inlet: what the generator gives"),
  cooking: z.array(cooking).min(1).max(3).optional().describe("range: a cooktop with one or two ovens on one circuit, or one appliance by its kind"),
  volts: z
    .union([z.literal(120), z.literal(240)])
    .optional()
    .describe("water-heater, heat, motor; 240 when left out"),
  minimum_ampacity: amperes.optional().describe("air-conditioner: minimum circuit ampacity as marked"),
  largest_overcurrent: rating.optional().describe("largest or only overcurrent device the nameplate or instructions name"),
  compressor: amperes.optional().describe("air-conditioner without a marked minimum ampacity: rated-load current of the compressor"),
  others: written("current", { max: 100 }).optional().describe("air-conditioner: full-load current of its fans together"),
  fan: written("current", { max: 100 }).optional().describe("heat: current of its blower motor"),
  welder: z.enum(["nonmotor", "motorGenerator"]).optional().describe("nonmotor: transformer or inverter, taken when left out"),
  duty_percent: z.number().min(1).max(100).optional().describe("welder: duty cycle at the rated current"),
  effective: amperes.optional().describe("welder: effective current I1eff as marked"),
  maximum: amperes.optional().describe("welder: maximum current I1max as marked"),
  horsepower: z.enum(keysOf<Horsepower>(MOTOR_CURRENT.rows)).optional().describe("motor"),
  service_factor: z.number().min(1).max(2).optional().describe("motor"),
  rise_c: z.number().min(10).max(180).optional().describe("motor: marked temperature rise in °C"),
  gallons: z.number().min(0).max(500).optional().describe("water-heater: 120 or less is a continuous load, taken when left out"),
  neutral: z.boolean().optional().describe("spa: four wires or three; four taken when left out"),
  integral_gfci: z.boolean().optional().describe("spa: listed and marked with ground-fault protection of its own"),
  gfci_in_disconnect: z.boolean().optional().describe("spa: the ground-fault protection is a GFCI breaker in the disconnect near it"),
  self_contained: z.boolean().optional().describe("spa: a listed self-contained unit, by its label"),
  field_heater: amperes.optional().describe("spa assembled in the field: current of its heater"),
  disconnect_distance: written("length", { max: 500 }).optional().describe("spa: from the water's edge to the disconnect"),
  frame_wires: z
    .union([z.literal(3), z.literal(4)])
    .optional()
    .describe("range, dryer: wires of the appliance's cord or terminal block"),
  neutral_bonded: z.boolean().optional().describe("generator-inlet: the generator's neutral is bonded to its frame, by its manual"),
  transfer: z.enum(TRANSFERS).optional().describe("generator-inlet: what puts the house on the generator"),
  transfer_listed: z.boolean().optional().describe("generator-inlet: the transfer equipment, or the interlock for this panel, is listed"),
  breaker_held: z.boolean().optional().describe("generator-inlet: a backfed breaker is held down by a fastener"),
});

/** The part of a circuit that tells what it serves. */
export const equipmentFields = {
  serves: z.enum(EQUIPMENT_KINDS),
  current: written("current", { min: 1, max: 400 })
    .optional()
    .describe("rated current: of the equipment, or of the inlet. Left out where the outlet or the nameplate gives it"),
  nameplate: nameplate.optional().describe("what the equipment's nameplate says; the fields go by what is served"),
  connection: z
    .enum(["hard-wired", ...keysOf<Receptacle>(RECEPTACLES)])
    .optional()
    .describe("ev-supply, welder, range: a receptacle or hard-wired"),
  several: z.boolean().optional().describe("receptacle-15, receptacle-20: more than one receptacle on the circuit"),
  place: z.enum(PLACES).optional().describe("where the outlet is, for ground-fault protection; by the route and what is served when left out"),
  disconnect: z.enum(["in-sight", "lockable-breaker", "plug", "none"]).optional().describe("the equipment's disconnecting means"),
  weather_resistant: z.boolean().optional().describe("a 15 or 20 A receptacle outdoors is marked WR"),
  gfci_device: z
    .enum(["none", "receptacle", "dead-front", "disconnect"])
    .default("none")
    .describe("ground-fault protection that does not sit in the circuit's breaker: in the receptacle, a dead-front device, or the disconnect at the outlet"),
  afci: z.boolean().optional().describe("the breaker is an arc-fault one or a dual-function one"),
};

export type Nameplate = z.output<typeof nameplate>;
export type NameplateField = keyof Nameplate;

/** Which fields of a nameplate belong to which kind. */
export const NAMEPLATE_FIELDS: Readonly<Record<EquipmentKind, readonly NameplateField[]>> = {
  "rv-50": [],
  "rv-30": [],
  "receptacle-20": [],
  "receptacle-15": [],
  general: [],
  "ev-supply": ["largest_overcurrent"],
  spa: ["largest_overcurrent", "neutral", "integral_gfci", "gfci_in_disconnect", "self_contained", "field_heater", "disconnect_distance"],
  range: ["load", "cooking", "largest_overcurrent", "frame_wires"],
  dryer: ["load", "frame_wires"],
  "water-heater": ["load", "volts", "gallons", "largest_overcurrent"],
  heat: ["load", "volts", "fan"],
  welder: ["welder", "duty_percent", "effective", "maximum"],
  "air-conditioner": ["minimum_ampacity", "largest_overcurrent", "compressor", "others"],
  motor: ["horsepower", "volts", "service_factor", "rise_c"],
  "generator-inlet": ["load", "neutral_bonded", "transfer", "transfer_listed", "breaker_held"],
};
