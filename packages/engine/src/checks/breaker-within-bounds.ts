import { everyEdition } from "../basis/edition.js";
import type { OvercurrentBound } from "../equipment/overcurrent-bound.js";
import type { Check } from "./finding.js";
import { eachCircuit, fail, notApplicable, pass } from "./outcome.js";

const ROUNDED: Readonly<Record<OvercurrentBound["rounds"], string>> = {
  up: ", rounded up to a standard rating",
  down: ", rounded down to a standard rating",
  none: ", as marked or rated",
};
const said = ({ rating, rounds }: OvercurrentBound) => `${rating} A${ROUNDED[rounds]}`;

export const breakerWithinBounds: Check = {
  id: "breaker-within-bounds",
  title: "The breaker is not larger than the equipment or outlet allows",
  rule: { sections: everyEdition("240.4, 422.11"), standing: "memory" },
  run: eachCircuit(({ circuit, rating, equipment: { kind, overcurrent } }) => {
    if (kind === "air-conditioner" || kind === "welder") return notApplicable(circuit.name, "judged by the check of its own article");
    const { least, most } = overcurrent;
    if (most === null) return notApplicable(circuit.name, "no upper bound but the conductors' own protection");
    if (least !== null && least.rating > most.rating)
      return fail(
        circuit.name,
        `the load asks ${said(least)}; the most allowed is ${said(most)}`,
        "check the nameplate: the load, or what it is connected to, does not fit this outlet",
      );
    return Number(rating) > most.rating
      ? fail(circuit.name, `${rating} A is over the most allowed, ${said(most)}`, `use ${most.rating} A or less`)
      : pass(circuit.name, `${rating} A; the most allowed is ${said(most)}`);
  }),
};
