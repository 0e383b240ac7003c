import { everyEdition } from "../basis/edition.js";
import type { DesignedRun } from "../designed.js";
import { Decimal, decimal, print } from "../quantity.js";

import type { Check, CheckGiven } from "./finding.js";
import { eachRun, fail, needsPerson, pass } from "./outcome.js";

/** Amperes at the panel a run leaves: the greater known of its two faults, or the service panel's, which nothing beyond it exceeds. */
function availableAt({ fault }: DesignedRun, { serviceFault }: CheckGiven["design"]): { readonly amperes: string; readonly worked: boolean } | null {
  const greatest = (faults: readonly ({ readonly value: string } | null | undefined)[]) => {
    const known = faults.flatMap((level) => (level ? [level.value] : []));
    return known.length === 0 ? null : Decimal.max(...known).toFixed();
  };
  const here = fault && greatest([fault.atStart.lineToLine, fault.atStart.lineToNeutral]);
  if (here) return { amperes: here, worked: true };
  const point = serviceFault?.point;
  const most = point ? greatest([point.lineToLine?.amperes, point.lineToNeutral?.amperes]) : null;
  return most === null ? null : { amperes: most, worked: false };
}

export const interruptingRating: Check = {
  id: "interrupting-rating",
  title: "The breaker interrupts the fault current available",
  rule: { sections: everyEdition("110.9"), standing: "published" },
  run: eachRun((designed, { design }) => {
    const { run } = designed;
    const rated = run.breaker.interrupting_kA;
    const available = availableAt(designed, design);
    if (available === null || rated === undefined)
      return needsPerson(
        run.name,
        "available fault current or interrupting rating not given",
        "ask the utility for the available fault current; read the kA on the breaker",
      );
    const kA = decimal(available.amperes).div(1000);
    const says = `${rated} kA breaker, ${print(kA)} kA available ${available.worked ? "at its panel" : "at the service panel, no more here"}`;
    return kA.gt(rated) ? fail(run.name, says, `use a breaker rated ${print(kA)} kA or more, or a listed series rating`) : pass(run.name, says);
  }),
};
