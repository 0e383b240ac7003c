import { cite } from "../basis/citation.js";
import { type Edition, everyEdition } from "../basis/edition.js";
import { decimal, type Numeric, print } from "../quantity.js";
import { type Worked, worked } from "../worked.js";

const INTERRUPTING = { sections: everyEdition("110.9"), standing: "published" } as const;

export interface Interrupting {
  readonly serves: boolean;
  readonly margin: Worked;
}

/** Whether a device's interrupting rating (kA) is at least the fault current at its line terminals, and by how many kA. 110.9. */
export function interruptingMargin(given: {
  readonly id: string;
  readonly available: Worked;
  readonly ratedKA: Numeric;
  readonly edition: Edition;
}): Interrupting {
  const kiloamperes = decimal(given.available.value).div(1000);
  const margin = decimal(given.ratedKA).minus(kiloamperes);
  return {
    serves: !margin.isNegative(),
    margin: worked({
      id: given.id,
      label: "Interrupting rating less available fault current",
      value: margin.toSignificantDigits(16).toFixed(),
      unit: "kA",
      expression: `${print(given.ratedKA)} kA − ${print(kiloamperes, 4)} kA`,
      inputs: [given.available.id],
      citations: [cite(INTERRUPTING, given.edition)!],
      edition: given.edition,
    }),
  };
}
