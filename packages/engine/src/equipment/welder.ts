import type { Edition } from "../basis/edition.js";
import { Decimal, decimal, type Numeric, print } from "../quantity.js";
import { readCell, rowUpTo } from "../tables/code-table.js";
import { WELDER_DUTY, type WelderKind } from "../tables/welder-duty.js";
import { worked } from "../worked.js";
import { ownArticleProtection } from "./conductor-protection.js";
import { type EquipmentCircuit, equipmentCircuit } from "./equipment-circuit.js";
import { gfciNeed, type OutletPlace } from "./gfci-need.js";
import { citeKnown, unseen2026 } from "./known-rule.js";
import { boundUp } from "./overcurrent-bound.js";

const AMPACITY = unseen2026("630.11(A)", "published");
const WELDER = unseen2026("630.12(A)", "published");
const CONDUCTORS = unseen2026("630.12(B)", "published");
const DISCONNECT = unseen2026("630.13", "one-source");
const OUTLET = unseen2026("210.21(B)(1) Exception No. 2", "memory");

/**
 * The circuit of one arc welder, 240 V: rated primary current (A) × the multiplier of its duty cycle (%, the next row up when
 * between two), or its marked effective current when given. The device is at most 200 % of the primary (or marked maximum)
 * current and 200 % of the conductors' ampacity, each rounded up; without `conductorAmpacity` the least ampacity is taken.
 * Throws RangeError over 100 % duty.
 */
export function welderCircuit(given: {
  readonly id: string;
  readonly primary: Numeric;
  readonly dutyPercent: number;
  readonly kind: WelderKind;
  readonly markedEffective?: Numeric;
  readonly markedMaximum?: Numeric;
  readonly conductorAmpacity?: Numeric;
  readonly receptacle?: number;
  readonly place?: OutletPlace;
  readonly edition: Edition;
}): EquipmentCircuit {
  const { id, primary, kind, markedEffective, edition } = given;
  const row = rowUpTo(WELDER_DUTY, given.dutyPercent);
  const cell = row === null ? null : readCell(WELDER_DUTY, row, kind, edition);
  if (cell === null) throw new RangeError(`no duty cycle of ${given.dutyPercent} %`);
  const needed = markedEffective === undefined ? decimal(primary).times(cell.value) : decimal(markedEffective);
  const expression = markedEffective === undefined ? `${print(primary)} A × ${cell.value}` : `${print(markedEffective)} A`;
  const rule = citeKnown(AMPACITY, edition);
  const ampacity = worked({
    id: `${id}.ampacity`,
    label: markedEffective === undefined ? `Minimum circuit ampacity at ${given.dutyPercent} % duty` : "Minimum circuit ampacity, marked effective current",
    value: needed.toFixed(),
    unit: "A",
    expression,
    cells: markedEffective === undefined ? [cell] : [],
    citations: [rule],
    edition,
  });
  const largest = given.markedMaximum ?? primary;
  const conductors = given.conductorAmpacity ?? needed;
  const forWelder = boundUp({
    id: `${id}.overcurrent.welder`,
    label: "Overcurrent device, most for the welder",
    amperes: decimal(largest).times(2),
    expression: `${print(largest)} A × 2`,
    citations: [citeKnown(WELDER, edition)],
    edition,
  });
  const most = boundUp({
    id: `${id}.overcurrent.most`,
    label: "Overcurrent device, most for the welder and its conductors",
    amperes: Decimal.min(decimal(largest).times(2), decimal(conductors).times(2)),
    expression: `min(${print(largest)} A × 2; ${print(conductors)} A × 2)`,
    inputs: [ampacity.id],
    citations: [citeKnown(WELDER, edition), citeKnown(CONDUCTORS, edition)],
    edition,
  });
  const least = boundUp({
    id: `${id}.overcurrent.least`,
    label: "Overcurrent device, least",
    amperes: needed,
    expression,
    inputs: [ampacity.id],
    citations: [rule],
    edition,
  });
  return equipmentCircuit({
    id,
    edition,
    says: kind === "nonmotor" ? "Arc welder, transformer or inverter" : "Arc welder, motor generator",
    volts: 240,
    poles: 2,
    neutral: false,
    before: forWelder ? [forWelder.worked] : [],
    ampacity,
    overcurrent: { least, most },
    ...ownArticleProtection("630", edition),
    disconnect: {
      required: "ask",
      says: "a switch, breaker or plug, unless the welder has a disconnect of its own built in; rated not less than its overcurrent device needs",
      citation: citeKnown(DISCONNECT, edition),
    },
    gfci: gfciNeed({ place: given.place ?? "garage", receptacle: true, rating: given.receptacle ?? 50, volts: 240, edition }),
    notes: [
      {
        says: "an outlet for this welder alone may be rated by the conductors' least ampacity; an outlet that other loads may use keeps the general limits",
        citation: citeKnown(OUTLET, edition),
      },
      { says: "a smaller conductor is right for this welder's duty cycle only: mark the outlet and the directory so", citation: rule },
    ],
  });
}
