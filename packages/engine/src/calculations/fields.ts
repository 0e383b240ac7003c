import * as z from "zod";
import { EDITIONS } from "../basis/edition.js";
import type { OutletPlace } from "../equipment/gfci-need.js";
import type { Insulation } from "../sizing/ampacity.js";
import { TRADE_SIZES } from "../sizing/raceway-fill.js";
import { CONDUIT_MATERIALS } from "../tables/impedance.js";
import { INSULATION_ROWS } from "../tables/insulated.js";
import { SIZES } from "../tables/size.js";
import { ALL_TRADE_SIZES } from "../tables/trade-size.js";

// ── Quantities ──────────────────────────────────────────────────────────────
/** Above 0, or from 0 when told, to a bound no house reaches. */
const quantity =
  (unit: string) =>
  (says: string, zero?: "or-zero"): z.ZodNumber =>
    (zero ? z.number().nonnegative() : z.number().positive()).max(10_000_000).describe(`${says}, ${unit}`);

export const amperes = quantity("A");
export const volts = quantity("V");
export const voltAmperes = quantity("VA");
export const watts = quantity("W");
export const kilowatts = quantity("kW");
export const feet = quantity("ft");
export const inches = quantity("in");
export const squareInches = quantity("in²");
export const cubicInches = quantity("in³");
export const squareFeet = quantity("ft²");
export const percent = quantity("%");
export const ohms = quantity("ohm");
export const pounds = quantity("lbf");
export const celsius = (says: string) => z.number().min(-60).max(150).describe(`${says}, °C`);
export const fahrenheit = (says: string) => z.number().min(-80).max(300).describe(`${says}, °F`);
export const count = (says: string, least = 1) => z.number().int().min(least).max(1000).describe(says);
export const factor = (says: string, most: number) => z.number().positive().max(most).describe(says);
export const yesNo = (says: string) => z.boolean().describe(says);
export const text = (says: string) => z.string().min(1).max(100).describe(says);

// ── Designations ────────────────────────────────────────────────────────────
export const edition = z.enum(EDITIONS).describe("edition of NFPA 70 in force");
export const size = z.enum(SIZES).describe('conductor size: AWG as "6" or "1/0", kcmil as "250"');
export const material = z.enum(["copper", "aluminum"]).describe("metal of the conductor");
export const conduit = z.enum(CONDUIT_MATERIALS).describe("material around the conductors; nonmetallic cable reads PVC");
export const tradeSize = z.enum(TRADE_SIZES).describe("trade size of the raceway");
export const anyTradeSize = z.enum(ALL_TRADE_SIZES).describe("trade size of the raceway, 3/8 to 6");
export const raceway = z
  .enum(["EMT", "ENT", "FMC", "HDPE", "IMC", "LFMC", "LFNC-A", "LFNC-B", "PVC-40", "PVC-80", "PVC-A", "PVC-EB", "RMC"])
  .describe("kind of raceway, Chapter 9 Table 4");
export const insulation = z
  .enum(["THWN-2", "THHN", "XHHW-2", "THW", "NM-B", "UF-B"] as const satisfies readonly Insulation[])
  .describe("insulation of the conductor, or the cable it is in");
export const tableInsulation = z.enum(Object.keys(INSULATION_ROWS) as [string, ...string[]]).describe("insulation, Chapter 9 Table 5");
export const terminalC = z.literal([60, 75]).describe("lowest temperature rating of the terminations, °C");
export const outletVolts = z.literal([120, 240]).describe("volts of the circuit, V");
export const place = z
  .enum([
    "indoors",
    "outdoors",
    "garage",
    "accessory-building",
    "basement",
    "crawl-space",
    "kitchen",
    "laundry",
    "bathroom",
  ] as const satisfies readonly OutletPlace[])
  .describe("where at the dwelling the outlet is");

// ── Groups ──────────────────────────────────────────────────────────────────
export const list = <Item extends z.ZodType>(item: Item, says: string, least = 1) => z.array(item).min(least).max(100).describe(says);
export const supply = z
  .strictObject({ size, material, sets: count("conductors in parallel of one phase") })
  .describe("largest ungrounded supply conductor of one phase");
export const wound = z
  .strictObject({ size, insulation: tableInsulation, count: count("how many of them") })
  .describe("the largest conductors: size, insulation and how many alike");
export const demand = z
  .strictObject({
    load: amperes("load current"),
    terminalLoad: amperes("load with 125 % of its continuous part"),
    overcurrent: amperes("rating of the overcurrent device"),
  })
  .describe("what the conductor has to serve");
