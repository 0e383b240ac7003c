import { article220, type Edition } from "../basis/edition.js";
import { Decimal, decimal, type Numeric, print } from "../quantity.js";
import { worked } from "../worked.js";
import { ordinaryProtection } from "./conductor-protection.js";
import { type EquipmentCircuit, equipmentCircuit } from "./equipment-circuit.js";
import { gfciNeed, type OutletPlace } from "./gfci-need.js";
import { citeKnown, unseen2026 } from "./known-rule.js";
import { boundAsGiven, boundUp } from "./overcurrent-bound.js";

const LOAD = unseen2026(article220("54"), "published");
const RATING = unseen2026("422.10(A)", "memory");
const OUTLET = unseen2026("210.21(B)(1)", "memory");
const FOUR_WIRE = unseen2026("250.140", "published");
const DISCONNECT = unseen2026("422.33", "memory");

/** The circuit of a household clothes dryer on a 30 A, 125/250 V receptacle: 5,000 VA or the nameplate (VA), whichever is larger. 220.54. */
export function dryerCircuit(given: {
  readonly id: string;
  readonly nameplate: Numeric;
  readonly place?: OutletPlace;
  readonly edition: Edition;
}): EquipmentCircuit {
  const { id, nameplate, edition } = given;
  const load = Decimal.max(5000, nameplate);
  const demand = worked({
    id: `${id}.demand`,
    label: "Load of the dryer",
    value: load.toFixed(),
    unit: "VA",
    expression: `max(5,000 VA; ${print(nameplate)} VA)`,
    citations: [citeKnown(LOAD, edition)],
    edition,
  });
  const amperes = load.div(240);
  const expression = `${print(load)} VA / 240 V`;
  const rating = citeKnown(RATING, edition);
  const ampacity = worked({
    id: `${id}.ampacity`,
    label: "Minimum circuit ampacity",
    value: decimal(amperes).toFixed(),
    unit: "A",
    expression,
    inputs: [demand.id],
    citations: [rating],
    edition,
  });
  return equipmentCircuit({
    id,
    edition,
    says: "Clothes dryer",
    volts: 240,
    poles: 2,
    neutral: true,
    before: [demand],
    ampacity,
    overcurrent: {
      least: boundUp({
        id: `${id}.overcurrent.least`,
        label: "Overcurrent device, least (30 A is usual)",
        amperes,
        expression,
        inputs: [ampacity.id],
        citations: [rating],
        edition,
      }),
      most: boundAsGiven({
        id: `${id}.overcurrent.most`,
        label: "Overcurrent device, most: the outlet's rating",
        amperes: 30,
        expression: "30 A",
        citations: [citeKnown(OUTLET, edition)],
        edition,
      }),
    },
    ...ordinaryProtection(edition),
    disconnect: { required: "yes", says: "the accessible cord and plug serve", citation: citeKnown(DISCONNECT, edition) },
    gfci: gfciNeed({ place: given.place ?? "laundry", receptacle: true, rating: 30, volts: 240, listedAppliance: true, edition }),
    notes: [
      {
        says: "a new circuit has four wires: the frame is grounded by the equipment grounding conductor, never by the neutral",
        citation: citeKnown(FOUR_WIRE, edition),
      },
    ],
  });
}
