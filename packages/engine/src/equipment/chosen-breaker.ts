import { print } from "../quantity.js";
import { beyondRatings, leastRating } from "../sizing/overcurrent.js";
import { type Worked, worked } from "../worked.js";
import type { EquipmentKind, EquipmentNeeds } from "./equipment.js";
import type { EquipmentCircuit } from "./equipment-circuit.js";
import type { OvercurrentBound } from "./overcurrent-bound.js";

type Choose = (equipment: EquipmentCircuit) => OvercurrentBound | null;

const least: Choose = ({ overcurrent }) => overcurrent.least ?? overcurrent.most;
/** A motor starts on the most its article allows; a dryer's breaker is its outlet's; an inlet's is the inlet's. */
const most: Choose = ({ overcurrent }) =>
  overcurrent.most === null || (overcurrent.least !== null && overcurrent.least.rating > overcurrent.most.rating) ? overcurrent.least : overcurrent.most;

/** Where the outlet's own rating or the load decides, in the words of every such circuit; other kinds choose a bound of their article. */
const CHOICE: Readonly<Record<EquipmentKind, Choose | "load">> = {
  "rv-50": "load",
  "rv-30": "load",
  "receptacle-20": "load",
  "receptacle-15": "load",
  general: "load",
  "ev-supply": "load",
  spa: least,
  range: least,
  dryer: most,
  "water-heater": least,
  heat: least,
  welder: most,
  "air-conditioner": most,
  motor: most,
  "generator-inlet": most,
};

/** The breaker of a circuit where the job names none, and whether the load alone decides it, so that the lines of its bounds say nothing more. */
export function chosenBreaker(given: {
  readonly kind: EquipmentKind;
  readonly equipment: EquipmentCircuit;
  readonly needs: EquipmentNeeds;
  readonly amperes: number;
}): { readonly breaker: Worked; readonly byLoad: boolean } {
  const { kind, equipment, needs, amperes } = given;
  const { edition } = equipment;
  const id = `${equipment.id}.overcurrent`;
  const choice = CHOICE[kind];
  if (choice === "load") {
    const [continuous, noncontinuous] = needs.continuous ? [amperes, 0] : [0, amperes];
    const breaker = leastRating({ id, continuous, noncontinuous, edition });
    // A 10 A rating, from 2023, is for lighting only: then the least of the equipment, 15 A, stands.
    if (Number(breaker.value) >= (equipment.overcurrent.least?.rating ?? 0)) return { breaker, byLoad: true };
  }
  const bound = choice === "load" ? least(equipment) : choice(equipment);
  if (bound === null) return { breaker: beyondRatings(id, `${print(equipment.ampacity.value)} A`, edition), byLoad: false };
  const { expression, rounding, citations } = bound.worked;
  return {
    breaker: worked({
      id,
      label: `Overcurrent device chosen${bound === equipment.overcurrent.least ? ": the least" : ": the most allowed"}`,
      value: String(bound.rating),
      unit: "A",
      expression,
      rounding,
      citations,
      inputs: [bound.worked.id],
      edition,
    }),
    byLoad: false,
  };
}
