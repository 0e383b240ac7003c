import type { Edition } from "../basis/edition.js";
import { decimal, type Numeric, print } from "../quantity.js";
import { worked } from "../worked.js";
import { ordinaryProtection } from "./conductor-protection.js";
import { type EquipmentCircuit, equipmentCircuit } from "./equipment-circuit.js";
import { citeKnown, unseen2026 } from "./known-rule.js";
import { boundAsGiven, boundUp } from "./overcurrent-bound.js";
import type { Statement } from "./statement.js";

const LOAD = unseen2026("215.2(A), 215.3", "memory");
const BUS = unseen2026("408.36", "published");
const BUILDING = unseen2026("225.39", "published");
const DISCONNECT = unseen2026("225.31, 225.32", "one-source");
const NEUTRAL = unseen2026("250.32(B), 250.142(B)", "memory");
const ELECTRODE = unseen2026("250.32(A)", "published");
const GFCI = unseen2026("210.8", "memory");

/** What the building fed is, for the least rating of its disconnect. */
export type FedBuilding = "same" | "pedestal" | "one-circuit" | "two-circuits" | "dwelling" | "other";
const LEAST_DISCONNECT: Readonly<Record<FedBuilding, number>> = { same: 0, pedestal: 0, "one-circuit": 15, "two-circuits": 30, dwelling: 100, other: 60 };

/**
 * The feeder of a subpanel: 125 % of the continuous load + the rest (A) for conductors and device, the device not over the bus
 * rating, and a separate building's disconnect not under 15, 30, 60 or 100 A. 215.2, 215.3, 225.39, 408.36.
 */
export function subpanelFeeder(given: {
  readonly id: string;
  readonly continuous: Numeric;
  readonly noncontinuous: Numeric;
  readonly bus: number;
  readonly building: FedBuilding;
  readonly edition: Edition;
}): EquipmentCircuit {
  const { id, continuous, noncontinuous, bus, building, edition } = given;
  const load = citeKnown(LOAD, edition);
  const needed = decimal(continuous).times("1.25").plus(noncontinuous);
  const expression = `${print(continuous)} A × 1.25 + ${print(noncontinuous)} A`;
  const floor = LEAST_DISCONNECT[building];
  const ampacity = worked({ id: `${id}.ampacity`, label: "Feeder ampacity", value: needed.toFixed(), unit: "A", expression, citations: [load], edition });
  const separate: readonly Statement[] =
    building === "same" || building === "pedestal"
      ? []
      : [
          {
            says:
              building === "one-circuit"
                ? "a building on one branch circuit with an equipment grounding conductor needs no electrode"
                : "a grounding electrode at the building, joined to its equipment grounding bar",
            citation: citeKnown(ELECTRODE, edition),
          },
        ];
  return equipmentCircuit({
    id,
    edition,
    says: "Feeder to a subpanel",
    volts: 240,
    poles: 2,
    neutral: true,
    ampacity,
    overcurrent: {
      least: boundUp({
        id: `${id}.overcurrent.least`,
        label: "Feeder overcurrent device, least",
        amperes: needed,
        expression,
        inputs: [ampacity.id],
        citations: [load],
        edition,
      }),
      most: boundAsGiven({
        id: `${id}.overcurrent.most`,
        label: "Feeder overcurrent device, most: the subpanel's bus",
        amperes: bus,
        expression: `${bus} A`,
        citations: [citeKnown(BUS, edition)],
        edition,
      }),
    },
    ...ordinaryProtection(edition),
    disconnect:
      building === "same"
        ? { required: "no", says: "in the same building the feeder's breaker serves", citation: citeKnown(DISCONNECT, edition) }
        : {
            required: building === "pedestal" ? "ask" : "yes",
            says: `readily accessible at the building, outside or inside nearest where the feeder comes in${floor > 0 ? `; rated ${floor} A or more` : ""}`,
            citation: citeKnown(floor > 0 ? BUILDING : DISCONNECT, edition),
          },
    gfci: { required: "no", says: "asked of the branch circuits, not of the feeder", citation: citeKnown(GFCI, edition) },
    notes: [
      { says: "four wires; the subpanel's neutral bar is isolated: no bonding screw or strap there", citation: citeKnown(NEUTRAL, edition) },
      ...separate,
    ],
  });
}
