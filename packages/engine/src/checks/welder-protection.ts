import { everyEdition } from "../basis/edition.js";
import { decimal, print } from "../quantity.js";
import { standardRatingAtLeast } from "../sizing/overcurrent.js";
import type { Check } from "./finding.js";
import { eachCircuit, fail, notApplicable, pass } from "./outcome.js";

export const welderProtection: Check = {
  id: "welder-protection",
  title: "A welder and its conductors are protected at 200 % or less",
  rule: { sections: everyEdition("630.12"), standing: "published" },
  run: eachCircuit(({ circuit, rating, segments, equipment: { kind } }, { basis }) => {
    if (kind !== "welder") return notApplicable(circuit.name, "not a welder");
    const twice = (amperes: string | number) => standardRatingAtLeast(decimal(amperes).times(2), basis.edition);
    const largest = circuit.nameplate?.maximum ?? circuit.current;
    const forWelder = twice(largest);
    if (forWelder !== null && Number(rating) > forWelder)
      return fail(circuit.name, `${rating} A is over ${forWelder} A, 200 % of the welder's ${print(largest)} A rounded up`, `use ${forWelder} A or less`);
    for (const { segment, ampacity } of segments) {
      const most = ampacity === null ? null : twice(ampacity.value);
      if (ampacity !== null && most !== null && Number(rating) > most)
        return fail(
          circuit.name,
          `${segment.name}: ${rating} A is over ${most} A, 200 % of the conductors' ${print(ampacity.value)} A rounded up`,
          `use ${most} A or less, or larger conductors`,
        );
    }
    return pass(circuit.name, `${rating} A; within 200 % of welder and conductors. Mark outlet and directory: for this welder's duty cycle only`);
  }),
};
