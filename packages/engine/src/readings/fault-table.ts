import { expectedReadings, loadOhms, type StatedLoad } from "./expected.js";
import { FAULTS, type Fault, type FaultId, type Variant } from "./faults.js";
import { type HouseCircuit, simulateReadings } from "./house-circuit.js";
import type { Readings } from "./pattern.js";
import { PROVED_BY } from "./proof.js";
import { READINGS, type ReadingName } from "./wiring.js";

/** One fault as it would be seen at an outlet: simulated readings, and which of them are out of band. */
export interface FaultRow {
  readonly id: FaultId;
  readonly likely: string;
  readonly variant: string;
  readonly toDo: string;
  readonly stop: string;
  /** The first set of readings that shows it: idle, loaded, idle with a low-impedance meter, or none. */
  readonly shows: "idle" | "loaded" | "low-impedance" | "nothing";
  readonly outOfBand: readonly ReadingName[];
  /** What that set reads; the idle set where none shows it. */
  readonly reads: Readings;
  /** What shows it where no reading does. */
  readonly provedBy: string;
}

/**
 * Every fault an outlet of this wiring can have, as a meter would read it: for each the variant that shows plainest.
 * Idle at 120 V a leg, or as far from it as the fault itself says; loaded with the stated load.
 */
export function faultTable(circuit: HouseCircuit, load: StatedLoad): readonly FaultRow[] {
  const bands = expectedReadings(circuit, load);
  const outside = (state: "idle" | "loaded", readings: Readings): readonly ReadingName[] =>
    READINGS[circuit.outlet].filter((reading) => {
      const band = bands.find((b) => b.reading === reading && b.state === state)!;
      const volts = readings[reading]!;
      return volts < band.least || volts > band.most;
    });
  const row = (fault: Fault, variant: Variant): FaultRow => {
    const legVolts = 120 * withinOf(variant.supply);
    const changed = { ...circuit, ...variant.circuit, legVolts };
    const heater = [loadOhms({ ...circuit, legVolts: 120 }, load)];
    const sets = [
      { shows: "idle", state: "idle", reads: simulateReadings(changed, variant.wiring) },
      { shows: "loaded", state: "loaded", reads: simulateReadings(changed, variant.wiring, heater) },
      { shows: "low-impedance", state: "idle", reads: simulateReadings(changed, variant.wiring, [], "low-impedance") },
    ] as const;
    const seen = sets.map((set) => ({ ...set, outOfBand: outside(set.state, set.reads) }));
    const { shows, reads, outOfBand } = seen.find((set) => set.outOfBand.length > 0) ?? { ...seen[0]!, shows: "nothing" as const };
    return {
      id: fault.id,
      likely: fault.says,
      variant: variant.says,
      toDo: fault.toDo,
      stop: fault.stop,
      shows,
      outOfBand,
      reads,
      provedBy: PROVED_BY[fault.id],
    };
  };
  const order = { idle: 0, loaded: 1, "low-impedance": 2, nothing: 3 } as const;
  const rows = FAULTS.filter((fault) => fault.outlets.includes(circuit.outlet)).map((fault) =>
    fault
      .variants(circuit.outlet, circuit.run)
      .map((variant) => row(fault, variant))
      .reduce((plainest, next) => (order[next.shows] < order[plainest.shows] ? next : plainest)),
  );
  return rows.sort((a, b) => order[a.shows] - order[b.shows]);
}

/** Nominal where the fault allows it, else midway of what it allows. */
function withinOf([least, most]: readonly [number, number]): number {
  return least <= 1 && most >= 1 ? 1 : (least + most) / 2;
}
