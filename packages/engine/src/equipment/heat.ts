import { type Edition, everyEdition } from "../basis/edition.js";
import { decimal, type Numeric, print } from "../quantity.js";
import { worked } from "../worked.js";
import { ordinaryProtection } from "./conductor-protection.js";
import { type EquipmentCircuit, equipmentCircuit } from "./equipment-circuit.js";
import { gfciNeed, type OutletPlace } from "./gfci-need.js";
import { citeKnown, unseen2026 } from "./known-rule.js";
import { boundAsGiven, boundUp } from "./overcurrent-bound.js";

const SIZING = unseen2026({ ...everyEdition<string | null>("424.4(B)"), "2017": "424.3(B)" }, "published");
const SUBDIVIDED = unseen2026("424.22(B)", "memory");
const DISCONNECT = unseen2026("424.19", "memory");

/** The circuit of fixed electric space heating: heaters (W) with their motor (A) at 125 %, the device the next standard rating. 424.4(B). */
export function heatCircuit(given: {
  readonly id: string;
  readonly watts: Numeric;
  readonly motorAmperes?: Numeric;
  readonly volts: 120 | 240;
  readonly place?: OutletPlace;
  readonly edition: Edition;
}): EquipmentCircuit {
  const { id, watts, motorAmperes = 0, volts, edition } = given;
  const needed = decimal(watts).div(volts).plus(motorAmperes).times("1.25");
  const expression = `(${print(watts)} W / ${volts} V + ${print(motorAmperes)} A) × 1.25`;
  const citations = [citeKnown(SIZING, edition)];
  const ampacity = worked({ id: `${id}.ampacity`, label: "Minimum circuit ampacity", value: needed.toFixed(), unit: "A", expression, citations, edition });
  const least = boundUp({
    id: `${id}.overcurrent.least`,
    label: "Overcurrent device, least",
    amperes: needed,
    expression,
    inputs: [ampacity.id],
    citations,
    edition,
  });
  return equipmentCircuit({
    id,
    edition,
    says: "Fixed electric space heating",
    volts,
    poles: volts === 240 ? 2 : 1,
    neutral: volts === 120,
    ampacity,
    overcurrent: {
      least,
      most: boundAsGiven({
        id: `${id}.overcurrent.most`,
        label: "Overcurrent device, most for one group of 48 A or less of elements",
        amperes: 60,
        expression: "60 A",
        citations: [citeKnown(SUBDIVIDED, edition)],
        edition,
      }),
    },
    ...ordinaryProtection(edition),
    disconnect: {
      required: "yes",
      says: "in sight of the heater, or a breaker that can be locked open; a thermostat with a marked off position may serve",
      citation: citeKnown(DISCONNECT, edition),
    },
    gfci: gfciNeed({ place: given.place ?? "indoors", receptacle: false, rating: least?.rating ?? 0, volts, edition }),
  });
}
