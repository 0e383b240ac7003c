import type { Edition } from "../basis/edition.js";
import { worked } from "../worked.js";
import { ordinaryProtection, severalReceptaclesProtection } from "./conductor-protection.js";
import { RECEPTACLES, type Receptacle } from "./equipment.js";
import { type EquipmentCircuit, equipmentCircuit } from "./equipment-circuit.js";
import { gfciNeed, type OutletPlace } from "./gfci-need.js";
import { citeKnown, unseen2026 } from "./known-rule.js";
import { boundAsGiven } from "./overcurrent-bound.js";

const SINGLE = unseen2026("210.21(B)(1)", "memory");
const SEVERAL = unseen2026("210.21(B)(3)", "memory");
const DISCONNECT = unseen2026("422.33", "memory");

/** The circuit of a receptacle worked at its own rating, alone or one of several alike. A 5-15R among several may be on 20 A: name the 5-20R then. */
export function receptacleCircuit(given: {
  readonly id: string;
  readonly receptacle: Receptacle;
  readonly several: boolean;
  readonly place: OutletPlace;
  readonly edition: Edition;
}): EquipmentCircuit {
  const { id, edition } = given;
  const form = RECEPTACLES[given.receptacle];
  const both = form.volts !== "125";
  const citations = [citeKnown(given.several ? SEVERAL : SINGLE, edition)];
  const expression = `${form.amperes} A`;
  const asRated = (which: "least" | "most") =>
    boundAsGiven({ id: `${id}.overcurrent.${which}`, label: "Overcurrent device, the outlet's rating", amperes: form.amperes, expression, citations, edition });
  return equipmentCircuit({
    id,
    edition,
    says: `Receptacle ${form.says}`,
    volts: both ? 240 : 120,
    poles: both ? 2 : 1,
    neutral: form.volts !== "250",
    ampacity: worked({
      id: `${id}.ampacity`,
      label: "Minimum circuit ampacity, the outlet's rating",
      value: String(form.amperes),
      unit: "A",
      expression,
      citations,
      edition,
    }),
    overcurrent: { least: asRated("least"), most: asRated("most") },
    ...(given.several ? severalReceptaclesProtection(edition) : ordinaryProtection(edition)),
    disconnect: { required: "no", says: "plug and receptacle serve", citation: citeKnown(DISCONNECT, edition) },
    gfci: gfciNeed({ place: given.place, receptacle: true, rating: form.amperes, volts: both ? 240 : 120, edition }),
  });
}
