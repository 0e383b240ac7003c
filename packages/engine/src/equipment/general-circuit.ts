import type { Edition } from "../basis/edition.js";
import { decimal, type Numeric, print } from "../quantity.js";
import { worked } from "../worked.js";
import { severalReceptaclesProtection } from "./conductor-protection.js";
import { type EquipmentCircuit, equipmentCircuit } from "./equipment-circuit.js";
import { gfciNeed, type OutletPlace } from "./gfci-need.js";
import { citeKnown, unseen2026 } from "./known-rule.js";
import { boundAsGiven, boundUp } from "./overcurrent-bound.js";

const LOAD = unseen2026("210.19(A), 210.20(A)", "memory");
const USES = unseen2026("210.23", "memory");
const DISCONNECT = unseen2026("404.2", "memory");

/** A 120 V lighting or general circuit of a dwelling: its load (A), 15 or 20 A, no next size up since portable loads may be plugged in. 210.23. */
export function generalCircuit(given: {
  readonly id: string;
  readonly amperes: Numeric;
  readonly place: OutletPlace;
  readonly edition: Edition;
}): EquipmentCircuit {
  const { id, amperes, edition } = given;
  const expression = `${print(amperes)} A`;
  const citations = [citeKnown(LOAD, edition)];
  const ampacity = worked({
    id: `${id}.ampacity`,
    label: "Minimum circuit ampacity",
    value: decimal(amperes).toFixed(),
    unit: "A",
    expression,
    citations,
    edition,
  });
  const least = boundUp({
    id: `${id}.overcurrent.least`,
    label: "Overcurrent device, least",
    amperes,
    expression,
    inputs: [ampacity.id],
    citations,
    edition,
  });
  return equipmentCircuit({
    id,
    edition,
    says: "Lighting or general circuit, 120 V",
    volts: 120,
    poles: 1,
    neutral: true,
    ampacity,
    overcurrent: {
      least,
      most: boundAsGiven({
        id: `${id}.overcurrent.most`,
        label: "Overcurrent device, most for lighting and general outlets of a dwelling",
        amperes: 20,
        expression: "20 A",
        citations: [citeKnown(USES, edition)],
        edition,
      }),
    },
    ...severalReceptaclesProtection(edition),
    disconnect: { required: "no", says: "switches and plugs serve", citation: citeKnown(DISCONNECT, edition) },
    gfci: gfciNeed({ place: given.place, receptacle: false, rating: least?.rating ?? 0, volts: 120, edition }),
  });
}
