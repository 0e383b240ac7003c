import type { Edition } from "../basis/edition.js";
import { OUTLETS } from "../outlet.js";
import type { Check } from "./finding.js";
import { eachCircuit, fail, notApplicable, pass } from "./outcome.js";

interface Outlet {
  readonly receptacle: boolean;
  readonly rating: number;
  readonly outdoors: boolean;
}

/** 2017: only 125 V, 15 and 20 A receptacles. From 2020: 125 to 250 V receptacles, and outdoor outlets to 50 A; to 60 A in 2026. */
const only2017 = (o: Outlet) => o.outdoors && o.receptacle && o.rating <= 20;
const to50 = (o: Outlet) => o.outdoors && (o.receptacle || o.rating <= 50);
const to60 = (o: Outlet) => o.outdoors && (o.receptacle || o.rating <= 60);
const ASKS: Readonly<Record<Edition, (outlet: Outlet) => boolean>> = { "2017": only2017, "2020": to50, "2023": to50, "2026": to60 };

export const gfci: Check = {
  id: "gfci",
  title: "Ground-fault protection where the edition asks it",
  rule: { sections: { "2017": "210.8(A)", "2020": "210.8(A), (F)", "2023": "210.8(A), (F)", "2026": "210.8(A), (F)" }, standing: "published" },
  run: eachCircuit((designed, { basis }) => {
    const { circuit } = designed;
    const last = designed.segments.at(-1);
    // An RV outlet is an outdoor outlet, though its cable may come straight through the wall.
    const outdoors = OUTLETS[circuit.serves].receptacleAmperes !== null || (last?.wet ?? false);
    const asked = ASKS[basis.edition]({ receptacle: OUTLETS[circuit.serves].receptacleAmperes !== null, rating: Number(designed.rating), outdoors });
    if (!asked) return notApplicable(circuit.name, `the ${basis.edition} edition does not ask it of this outlet`);
    return circuit.breaker.gfci
      ? pass(circuit.name, "the breaker is a GFCI")
      : fail(
          circuit.name,
          `outdoors at a dwelling the ${basis.edition} edition asks GFCI of this outlet`,
          "use a GFCI breaker of the panel's family; an amendment of the jurisdiction may say otherwise",
        );
  }),
};
