import { citeOther } from "../basis/citation.js";
import type { Edition } from "../basis/edition.js";
import { Decimal, decimal, print } from "../quantity.js";
import { readCell } from "../tables/code-table.js";
import { CONDUCTOR } from "../tables/conductor.js";
import { INSULATED_CONDUCTOR, INSULATION_ROWS } from "../tables/insulated.js";
import type { Size } from "../tables/size.js";
import { type Worked, worked } from "../worked.js";

/** lb/in³. Copper and aluminum by handbooks; thermoset (XHHW, RHW) near that of polyethylene, the rest near that of PVC with nylon. */
const METAL = { copper: "0.321", aluminum: "0.0975" } as const;
const INSULATION = { thermoset: "0.035", thermoplastic: "0.05" } as const;
const SOURCE = citeOther("Densities of metals and insulation", "lb/in³; strands lie 2 % longer than the conductor", "memory");
/** Square inches in a circular mil, a circle of one thousandth of an inch: π / 4 millionths, to twice the digits of a weight. */
const SQUARE_INCHES_A_CMIL = decimal("7.85398163397e-7");

/** Weight of one insulated conductor, lb/ft, from its circular mils and its area in Chapter 9. Close enough for a pull; a maker's figure is better. */
export function conductorWeight(given: {
  readonly id: string;
  readonly size: Size;
  readonly material: "copper" | "aluminum";
  readonly insulation: string;
  readonly edition: Edition;
}): Worked | null {
  const { edition } = given;
  const cmil = readCell(CONDUCTOR, given.size, "cmil", edition);
  const whole = readCell(INSULATED_CONDUCTOR, `${INSULATION_ROWS[given.insulation] ?? ""} ${given.size}`, "area", edition);
  if (cmil === null || whole === null) return null;
  const metal = decimal(cmil.value).times(SQUARE_INCHES_A_CMIL);
  const dense = /^(X|RH)/.test(given.insulation) ? INSULATION.thermoset : INSULATION.thermoplastic;
  const cover = Decimal.max(0, decimal(whole.value).minus(metal));
  const weight = metal.times("1.02").times(METAL[given.material]).plus(cover.times(dense)).times(12);
  return worked({
    id: given.id,
    label: "Weight of one conductor",
    value: weight.toSignificantDigits(6).toFixed(),
    unit: "lb/ft",
    expression: `12 × (1.02 × ${print(metal, 5)} × ${METAL[given.material]} + ${print(cover, 5)} × ${dense})`,
    cells: [cmil, whole],
    citations: [SOURCE],
    edition,
  });
}
