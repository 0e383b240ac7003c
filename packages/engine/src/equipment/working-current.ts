import type { Circuit } from "../job/schema.js";
import { decimal } from "../quantity.js";
import { needsOf } from "./circuit-needs.js";
import type { EquipmentKind } from "./equipment.js";
import type { EquipmentCircuit } from "./equipment-circuit.js";

type CurrentOf = (circuit: Circuit, equipment: EquipmentCircuit) => number;

const round = (amperes: ReturnType<typeof decimal>) => amperes.toDecimalPlaces(4).toNumber();
/** A receptacle is worked at its own rating: anything up to it may be plugged in. */
const ofOutlet: CurrentOf = (circuit) => needsOf(circuit).receptacleAmperes ?? asEntered(circuit);
function asEntered({ current }: Circuit): number {
  if (current === undefined) throw new Error("the reader lets no such circuit through without its current");
  return current;
}
const byAmpacity: CurrentOf = (_circuit, { ampacity }) => round(decimal(ampacity.value));
const byHeat: CurrentOf = ({ nameplate }, { volts }) =>
  round(
    decimal(nameplate?.load ?? 0)
      .div(volts)
      .plus(nameplate?.fan ?? 0),
  );

const CURRENTS: Readonly<Record<EquipmentKind, CurrentOf>> = {
  "rv-50": ofOutlet,
  "rv-30": ofOutlet,
  "receptacle-20": ofOutlet,
  "receptacle-15": ofOutlet,
  general: asEntered,
  "ev-supply": asEntered,
  spa: asEntered,
  range: byAmpacity,
  dryer: byAmpacity,
  "water-heater": byHeat,
  heat: byHeat,
  // The current while it welds, which its duty cycle does not lessen.
  welder: ({ current, nameplate }) => current ?? nameplate?.maximum ?? nameplate?.effective ?? 0,
  "air-conditioner": ({ nameplate }, { ampacity }) =>
    nameplate?.compressor === undefined ? round(decimal(ampacity.value)) : round(decimal(nameplate.compressor).plus(nameplate.others ?? 0)),
  motor: (_circuit, { ampacity }) => round(decimal(ampacity.value).div("1.25")),
  "generator-inlet": asEntered,
};

/** Amperes a circuit draws in use, without the 125 % of what is continuous: what its voltage drop and its load are worked at. */
export function workingCurrent(circuit: Circuit, equipment: EquipmentCircuit): number {
  return CURRENTS[circuit.serves](circuit, equipment);
}
