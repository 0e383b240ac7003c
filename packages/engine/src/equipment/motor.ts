import type { Edition } from "../basis/edition.js";
import { decimal, type Numeric, print } from "../quantity.js";
import { readCell } from "../tables/code-table.js";
import { type Horsepower, MOTOR_CURRENT, type MotorVolts } from "../tables/motor-current.js";
import { type Worked, worked } from "../worked.js";
import { ownArticleProtection } from "./conductor-protection.js";
import { type EquipmentCircuit, equipmentCircuit } from "./equipment-circuit.js";
import { gfciNeed, type OutletPlace } from "./gfci-need.js";
import { citeKnown, unseen2026 } from "./known-rule.js";
import { boundUp } from "./overcurrent-bound.js";

const CURRENT = unseen2026("430.6(A)(1)", "published");
const CONDUCTOR = unseen2026("430.22", "published");
const DEVICE = unseen2026("430.52(C)(1)", "published");
const CEILING = unseen2026("430.52(C)(1) Exception No. 2", "one-source");
const OVERLOAD = unseen2026("430.32(A)(1)", "published");
const DISCONNECT_RATING = unseen2026("430.110(A)", "memory");
const DISCONNECT = unseen2026("430.102(B)", "memory");

export interface MotorCircuit extends EquipmentCircuit {
  /** Largest trip setting of the overload device, by the nameplate's current. */
  readonly overload: Worked;
}

/**
 * The circuit of one continuous-duty single-phase motor with an inverse-time breaker. Full-load current from the table, not the
 * nameplate; the nameplate's current (A) sets the overload: 125 % for a service factor of 1.15 or more or a rise of 40 °C or
 * less, else 115 %. The device at most 250 %, next standard size up; 400 % to 100 A where it does not start otherwise.
 */
export function motorCircuit(given: {
  readonly id: string;
  readonly horsepower: Horsepower;
  readonly motorVolts: MotorVolts;
  readonly nameplate: Numeric;
  readonly serviceFactor?: Numeric;
  readonly riseC?: Numeric;
  readonly place?: OutletPlace;
  readonly edition: Edition;
}): MotorCircuit {
  const { id, horsepower, motorVolts, nameplate, edition } = given;
  const cell = readCell(MOTOR_CURRENT, horsepower, motorVolts, edition);
  if (cell === null) throw new RangeError(`no full-load current for ${horsepower} hp`);
  const current = worked({
    id: `${id}.current`,
    label: `Full-load current of ${horsepower} hp at ${motorVolts} V`,
    value: decimal(cell.value).toFixed(),
    unit: "A",
    expression: `${cell.value} A`,
    cells: [cell],
    citations: [citeKnown(CURRENT, edition)],
    edition,
  });
  const flc = decimal(cell.value);
  const ampacity = worked({
    id: `${id}.ampacity`,
    label: "Minimum circuit ampacity",
    value: flc.times("1.25").toFixed(),
    unit: "A",
    expression: `${cell.value} A × 1.25`,
    inputs: [current.id],
    citations: [citeKnown(CONDUCTOR, edition)],
    edition,
  });
  const least = boundUp({
    id: `${id}.overcurrent.least`,
    label: "Breaker that is also the disconnect, least",
    amperes: flc.times("1.15"),
    expression: `${cell.value} A × 1.15`,
    inputs: [current.id],
    citations: [citeKnown(DISCONNECT_RATING, edition)],
    edition,
  });
  const most = boundUp({
    id: `${id}.overcurrent.most`,
    label: "Inverse-time breaker, most",
    amperes: flc.times("2.5"),
    expression: `${cell.value} A × 2.5`,
    inputs: [current.id],
    citations: [citeKnown(DEVICE, edition)],
    edition,
  });
  const ceiling = flc.times(4);
  const generous = decimal(given.serviceFactor ?? 1).gte("1.15") || (given.riseC !== undefined && decimal(given.riseC).lte(40));
  const factor = generous ? "1.25" : "1.15";
  const overload = worked({
    id: `${id}.overload`,
    label: "Overload device, largest setting",
    value: decimal(nameplate).times(factor).toFixed(),
    unit: "A",
    expression: `${print(nameplate)} A × ${factor}`,
    citations: [citeKnown(OVERLOAD, edition)],
    edition,
  });
  const single = motorVolts === "115";
  return {
    ...equipmentCircuit({
      id,
      edition,
      says: `Motor, ${horsepower} hp`,
      volts: single ? 120 : 240,
      poles: single ? 1 : 2,
      neutral: single,
      before: [current],
      ampacity,
      overcurrent: { least, most },
      after: [overload],
      ...ownArticleProtection("430", edition),
      disconnect: {
        required: "yes",
        says: "in sight of the motor, or one in sight of its controller that can be locked open where the exception serves",
        citation: citeKnown(DISCONNECT, edition),
      },
      gfci: gfciNeed({
        place: given.place ?? "indoors",
        receptacle: false,
        rating: least?.rating ?? 0,
        volts: single ? 120 : 240,
        edition,
      }),
      notes: [
        {
          says: `where the motor will not start on that, the breaker may go up, but not over ${print(ceiling)} A (400 %)`,
          citation: citeKnown(CEILING, edition),
        },
      ],
    }),
    overload,
  };
}
