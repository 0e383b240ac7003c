import type { Edition } from "../basis/edition.js";
import { everyEdition } from "../basis/edition.js";
import type { Check } from "./finding.js";
import { eachCircuit, needsPerson, notApplicable } from "./outcome.js";

/** Over 60 A (or 150 V to ground) to 2023; every permanently connected unit in 2026. */
const over60 = (amperes: number) => amperes > 60;
const ASKS: Readonly<Record<Edition, (amperes: number) => boolean>> = { "2017": over60, "2020": over60, "2023": over60, "2026": () => true };

export const evDisconnect: Check = {
  id: "ev-disconnect",
  title: "EV supply equipment has its disconnect",
  rule: { sections: everyEdition("625.43"), standing: "published" },
  run: eachCircuit(({ circuit, rating }, { basis }) => {
    if (circuit.serves !== "ev-supply") return notApplicable(circuit.name, "not EV supply equipment");
    return ASKS[basis.edition](Number(circuit.current))
      ? needsPerson(
          circuit.name,
          `the ${basis.edition} edition asks a disconnecting means for this equipment`,
          "readily accessible and lockable open, shown on the one-line",
        )
      : notApplicable(circuit.name, `${rating} A breaker, ${circuit.current} A: 60 A or less and 150 V to ground or less`);
  }),
};
