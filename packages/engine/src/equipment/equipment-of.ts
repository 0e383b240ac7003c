import type { Edition } from "../basis/edition.js";
import type { Nameplate } from "../job/nameplate.js";
import type { Circuit } from "../job/schema.js";
import { decimal } from "../quantity.js";
import { airConditionerCircuit } from "./air-conditioner.js";
import { needsOf, usualPlace } from "./circuit-needs.js";
import type { CookingAppliance } from "./cooking-demand.js";
import { dryerCircuit } from "./dryer.js";
import type { EquipmentKind, EquipmentNeeds } from "./equipment.js";
import type { EquipmentCircuit } from "./equipment-circuit.js";
import { evSupplyCircuit } from "./ev-supply.js";
import { generalCircuit } from "./general-circuit.js";
import { type GeneratorInletCircuit, generatorInletCircuit } from "./generator-inlet.js";
import type { OutletPlace } from "./gfci-need.js";
import { heatCircuit } from "./heat.js";
import { motorCircuit } from "./motor.js";
import { rangeCircuit } from "./range.js";
import { receptacleCircuit } from "./receptacle.js";
import { spaCircuit } from "./spa.js";
import { waterHeaterCircuit } from "./water-heater.js";
import { welderCircuit } from "./welder.js";

interface Given {
  readonly id: string;
  readonly circuit: Circuit;
  readonly plate: Nameplate;
  readonly needs: EquipmentNeeds;
  readonly place: OutletPlace;
  readonly edition: Edition;
}

/** Household dryers count 5,000 VA at the least, 220.54. */
export const LEAST_DRYER_VA = 5000;

/** What the reader of the job makes sure is there. */
function sure<T>(value: T | undefined, what: string): T {
  if (value === undefined) throw new Error(`the reader lets no circuit through without its ${what}`);
  return value;
}

/** The cooking appliances of a circuit with their nameplates in VA. */
export function cookingOf(plate: Nameplate): readonly { readonly is: CookingAppliance["is"]; readonly load: number }[] {
  return plate.cooking ?? [{ is: "range", load: sure(plate.load, "cooking load") }];
}

const RANGE = ({ id, plate, needs, place, edition }: Given): EquipmentCircuit => {
  const made = rangeCircuit({
    id,
    appliances: cookingOf(plate).map(({ is, load }) => ({ is, kW: decimal(load).div(1000) })),
    ...(needs.receptacleAmperes === null ? {} : { receptacle: needs.receptacleAmperes }),
    ...(plate.largest_overcurrent === undefined ? {} : { marked: plate.largest_overcurrent }),
    place,
    edition,
  });
  if (made === null) throw new Error("the reader lets no such set of cooking appliances on one circuit");
  return made;
};

const receptacleOf = ({ id, circuit, needs, place, edition }: Given): EquipmentCircuit =>
  receptacleCircuit({ id, receptacle: sure(needs.receptacle ?? undefined, "receptacle"), several: circuit.several ?? false, place, edition });

const CALCULATORS: Readonly<Record<Exclude<EquipmentKind, "generator-inlet">, (given: Given) => EquipmentCircuit>> = {
  "rv-50": receptacleOf,
  "rv-30": receptacleOf,
  "receptacle-20": receptacleOf,
  "receptacle-15": receptacleOf,
  general: ({ id, circuit, place, edition }) => generalCircuit({ id, amperes: sure(circuit.current, "current"), place, edition }),
  "ev-supply": ({ id, circuit, plate, needs, place, edition }) =>
    evSupplyCircuit({
      id,
      amperes: sure(circuit.current, "current"),
      ...(needs.receptacleAmperes === null ? {} : { receptacle: needs.receptacleAmperes }),
      ...(plate.largest_overcurrent === undefined ? {} : { marked: plate.largest_overcurrent }),
      place,
      edition,
    }),
  spa: ({ id, circuit, plate, needs, edition }) =>
    spaCircuit({
      id,
      amperes: sure(circuit.current, "current"),
      ...(plate.largest_overcurrent === undefined ? {} : { marked: plate.largest_overcurrent }),
      neutral: needs.neutral,
      integralGfci: plate.integral_gfci ?? false,
      ...(plate.field_heater === undefined ? {} : { fieldAssembledHeater: plate.field_heater }),
      edition,
    }),
  range: RANGE,
  dryer: ({ id, plate, place, edition }) => dryerCircuit({ id, nameplate: plate.load ?? LEAST_DRYER_VA, place, edition }),
  "water-heater": ({ id, plate, needs, place, edition }) =>
    waterHeaterCircuit({
      id,
      watts: sure(plate.load, "load"),
      volts: needs.volts,
      gallons: plate.gallons ?? 0,
      ...(plate.largest_overcurrent === undefined ? {} : { marked: plate.largest_overcurrent }),
      place,
      edition,
    }),
  heat: ({ id, plate, needs, place, edition }) =>
    heatCircuit({ id, watts: sure(plate.load, "load"), motorAmperes: plate.fan ?? 0, volts: needs.volts, place, edition }),
  welder: ({ id, circuit, plate, needs, place, edition }) =>
    welderCircuit({
      id,
      primary: sure(circuit.current ?? plate.maximum, "rated primary current"),
      dutyPercent: plate.duty_percent ?? 100,
      kind: plate.welder ?? "nonmotor",
      ...(plate.effective === undefined ? {} : { markedEffective: plate.effective }),
      ...(plate.maximum === undefined ? {} : { markedMaximum: plate.maximum }),
      ...(needs.receptacleAmperes === null ? {} : { receptacle: needs.receptacleAmperes }),
      place,
      edition,
    }),
  "air-conditioner": ({ id, plate, edition }) =>
    airConditionerCircuit({
      id,
      rating:
        plate.minimum_ampacity === undefined
          ? { compressor: sure(plate.compressor, "rated-load current"), others: plate.others ?? 0 }
          : { minimumCircuit: plate.minimum_ampacity, largestDevice: sure(plate.largest_overcurrent, "largest device") },
      edition,
    }),
  motor: ({ id, circuit, plate, needs, place, edition }) => {
    const horsepower = sure(plate.horsepower, "horsepower");
    return motorCircuit({
      id,
      horsepower,
      motorVolts: needs.volts === 120 ? "115" : "230",
      nameplate: sure(circuit.current, "nameplate current"),
      ...(plate.service_factor === undefined ? {} : { serviceFactor: plate.service_factor }),
      ...(plate.rise_c === undefined ? {} : { riseC: plate.rise_c }),
      place,
      edition,
    });
  },
};

export type AskedCircuit = EquipmentCircuit & { readonly generator: Pick<GeneratorInletCircuit, "transfer" | "neutralSwitching"> | null };

/** What the equipment of a circuit asks of it, by the calculation of its kind. Throws where the job lacks what the reader asks for. */
export function equipmentOf(circuit: Circuit, edition: Edition): AskedCircuit {
  const given: Given = {
    id: circuit.id,
    circuit,
    plate: circuit.nameplate ?? {},
    needs: needsOf(circuit),
    place: circuit.place ?? usualPlace(circuit, null),
    edition,
  };
  if (circuit.serves !== "generator-inlet") return { ...CALCULATORS[circuit.serves](given), generator: null };
  const inlet = sure(circuit.current, "rating") as 20 | 30 | 50;
  const made = generatorInletCircuit({
    id: circuit.id,
    inlet,
    generatorWatts: given.plate.load ?? inlet * 240,
    // What a transfer takes over is the whole house, known only when the service is; compared by its own check.
    loadVa: 0,
    neutralBonded: sure(given.plate.neutral_bonded, "neutral bond"),
    transfer: sure(given.plate.transfer, "means of transfer"),
    edition,
  });
  return { ...made, generator: { transfer: made.transfer, neutralSwitching: made.neutralSwitching } };
}
