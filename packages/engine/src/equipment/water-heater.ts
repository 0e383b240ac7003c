import type { Edition } from "../basis/edition.js";
import { decimal, type Numeric, print } from "../quantity.js";
import { worked } from "../worked.js";
import { ordinaryProtection } from "./conductor-protection.js";
import { type EquipmentCircuit, equipmentCircuit } from "./equipment-circuit.js";
import { gfciNeed, type OutletPlace } from "./gfci-need.js";
import { citeKnown, unseen2026 } from "./known-rule.js";
import { boundAsGiven, boundUp } from "./overcurrent-bound.js";

const CONTINUOUS = unseen2026("422.13", "one-source");
const RATING = unseen2026("422.10(A)", "memory");
const OVERCURRENT = unseen2026("422.11(E)(3)", "one-source");
const TWENTY = unseen2026("422.11(E)(2)", "memory");
const MARKED = unseen2026("422.11(A)", "one-source");
const DISCONNECT = unseen2026("422.31(B)", "memory");

/**
 * The circuit of an electric water heater. A storage tank of 120 gal or less is a continuous load (422.13). Watts and volts in;
 * the device is at most 150 % of the rated current, rounded up (over 13.3 A), or 20 A, unless the heater is `marked` with one.
 */
export function waterHeaterCircuit(given: {
  readonly id: string;
  readonly watts: Numeric;
  readonly volts: 120 | 240;
  readonly gallons: Numeric;
  readonly marked?: number;
  readonly place?: OutletPlace;
  readonly edition: Edition;
}): EquipmentCircuit {
  const { id, watts, volts, marked, edition } = given;
  const rated = decimal(watts).div(volts);
  const current = worked({
    id: `${id}.current`,
    label: "Rated current",
    value: rated.toFixed(),
    unit: "A",
    expression: `${print(watts)} W / ${volts} V`,
    citations: [citeKnown(RATING, edition)],
    edition,
  });
  const storage = decimal(given.gallons).lte(120);
  const rule = citeKnown(storage ? CONTINUOUS : RATING, edition);
  const needed = storage ? rated.times("1.25") : rated;
  const expression = storage ? `${print(watts)} W / ${volts} V × 1.25` : `${print(watts)} W / ${volts} V`;
  const ampacity = worked({
    id: `${id}.ampacity`,
    label: storage ? "Minimum circuit ampacity, continuous load" : "Minimum circuit ampacity",
    value: needed.toFixed(),
    unit: "A",
    expression,
    inputs: [current.id],
    citations: [rule],
    edition,
  });
  const id2 = `${id}.overcurrent.most`;
  const label = "Overcurrent device, most";
  const small = rated.lte("13.3");
  const least = boundUp({
    id: `${id}.overcurrent.least`,
    label: "Overcurrent device, least",
    amperes: needed,
    expression,
    inputs: [ampacity.id],
    citations: [rule],
    edition,
  });
  const most =
    marked !== undefined
      ? boundAsGiven({ id: id2, label: `${label}, as marked`, amperes: marked, expression: `${marked} A`, citations: [citeKnown(MARKED, edition)], edition })
      : small
        ? boundAsGiven({ id: id2, label: `${label}, 13.3 A or less`, amperes: 20, expression: "20 A", citations: [citeKnown(TWENTY, edition)], edition })
        : boundUp({
            id: id2,
            label: `${label}, 150 %`,
            amperes: rated.times("1.5"),
            expression: `${print(watts)} W / ${volts} V × 1.5`,
            inputs: [current.id],
            citations: [citeKnown(OVERCURRENT, edition)],
            edition,
          });
  return equipmentCircuit({
    id,
    edition,
    says: storage ? "Storage water heater" : "Water heater",
    volts,
    poles: volts === 240 ? 2 : 1,
    neutral: volts === 120,
    before: [current],
    ampacity,
    overcurrent: { least, most },
    ...ordinaryProtection(edition),
    disconnect: { required: "yes", says: "a switch or breaker in sight of it, or a breaker that can be locked open", citation: citeKnown(DISCONNECT, edition) },
    gfci: gfciNeed({ place: given.place ?? "indoors", receptacle: false, rating: least?.rating ?? 0, volts, edition }),
  });
}
