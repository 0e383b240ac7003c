import { type Edition, everyEdition } from "../basis/edition.js";
import { decimal, type Numeric, print } from "../quantity.js";
import { worked } from "../worked.js";
import { ordinaryProtection } from "./conductor-protection.js";
import { type EquipmentCircuit, equipmentCircuit } from "./equipment-circuit.js";
import { citeKnown, unseen2026 } from "./known-rule.js";
import { boundAsGiven, boundUp } from "./overcurrent-bound.js";

const HEATER = unseen2026("680.10", "one-source");
const INSTRUCTIONS = unseen2026("110.3(B)", "published");
const DISCONNECT = unseen2026({ ...everyEdition("680.13"), "2017": "680.12" }, "memory");
const GFCI = unseen2026("680.44", "one-source");
const GROUNDING = unseen2026("680.42(C), 680.21(A)", "one-source");
const FEEDER = unseen2026("680.25(A)", "memory");
const BONDING = unseen2026("680.42(B), 680.26", "one-source");

/**
 * The circuit of a hot tub or spa at a one-family dwelling, 240 V. `amperes` is the nameplate's; `marked` the device its
 * nameplate or instructions name, which governs. Without it the load is taken at 125 %, as for a pool heater (680.10; some
 * hold that 100 % serves). `integralGfci`: listed with its own ground-fault protection, marked so. Amperes out.
 */
export function spaCircuit(given: {
  readonly id: string;
  readonly amperes: Numeric;
  readonly marked?: number;
  readonly neutral: boolean;
  readonly integralGfci: boolean;
  /** Heater current in A of a field-assembled tub; leave out for a listed self-contained one. */
  readonly fieldAssembledHeater?: Numeric;
  readonly edition: Edition;
}): EquipmentCircuit {
  const { id, amperes, marked, edition } = given;
  const needed = decimal(amperes).times("1.25");
  const expression = `${print(amperes)} A × 1.25`;
  const exempt = decimal(given.fieldAssembledHeater ?? 0).gt(50);
  const heater = citeKnown(HEATER, edition);
  const instructions = citeKnown(INSTRUCTIONS, edition);
  const ampacity = worked({
    id: `${id}.ampacity`,
    label: "Minimum circuit ampacity, heater load at 125 %",
    value: needed.toFixed(),
    unit: "A",
    expression,
    citations: [heater],
    edition,
  });
  const asMarked = (which: "least" | "most") =>
    boundAsGiven({
      id: `${id}.overcurrent.${which}`,
      label: "Overcurrent device as marked",
      amperes: marked!,
      expression: `${marked} A`,
      citations: [instructions],
      edition,
    });
  return equipmentCircuit({
    id,
    edition,
    says: "Hot tub or spa",
    volts: 240,
    poles: 2,
    neutral: given.neutral,
    ampacity,
    overcurrent:
      marked === undefined
        ? {
            least: boundUp({
              id: `${id}.overcurrent.least`,
              label: "Overcurrent device, least",
              amperes: needed,
              expression,
              inputs: [ampacity.id],
              citations: [heater],
              edition,
            }),
            most: boundAsGiven({
              id: `${id}.overcurrent.most`,
              label: "Overcurrent device, most for one heater group of 48 A or less",
              amperes: 60,
              expression: "60 A",
              citations: [heater],
              edition,
            }),
          }
        : { least: asMarked("least"), most: asMarked("most") },
    ...ordinaryProtection(edition),
    disconnect: {
      required: "yes",
      says: "readily accessible, in sight of the equipment, at least 5 ft from the water's edge unless a permanent barrier gives that reach; opens all ungrounded conductors",
      citation: citeKnown(DISCONNECT, edition),
    },
    gfci: exempt
      ? {
          required: "no",
          says: "a field-assembled tub with more than 50 A of heater is exempt; 210.8(F) may still ask it outdoors",
          citation: citeKnown(GFCI, edition),
        }
      : given.integralGfci
        ? {
            required: "no",
            says: "a listed unit marked as having its own ground-fault protection; 210.8(F) may still ask it of the outlet outdoors",
            citation: citeKnown(GFCI, edition),
          }
        : { required: "yes", says: "the outlet that supplies a spa or hot tub has ground-fault protection", citation: citeKnown(GFCI, edition) },
    notes: [
      {
        says: "equipment grounding conductor of insulated copper, not under 12 AWG nor under the size for the breaker; indoors at a one-family dwelling one within the cable's outer sheath serves",
        citation: citeKnown(GROUNDING, edition),
      },
      {
        says: "a feeder to a panel for the spa carries an insulated copper equipment grounding conductor, not under 12 AWG",
        citation: citeKnown(FEEDER, edition),
      },
      {
        says: "metal within 5 ft and the perimeter surface are bonded with 8 AWG solid copper, unless the tub is a listed self-contained one that meets every condition of the exception",
        citation: citeKnown(BONDING, edition),
      },
    ],
  });
}
