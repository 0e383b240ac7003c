import type { DesignedCircuit, DesignedJob } from "../designed.js";
import { type Diagnosis, diagnose } from "./diagnose.js";
import { outletCircuit, wiringShape } from "./outlet-circuit.js";
import type { EnteredFile } from "./readings-file.js";
import { READINGS } from "./wiring.js";

/** A reading that cannot be of this outlet: not bad wiring but a wrong entry. */
export interface EntryProblem {
  readonly path: string;
  readonly what: string;
  readonly mend: string;
}

/** Entries that the outlet's wiring cannot give, before anything is diagnosed. */
export function entryProblems(circuit: DesignedCircuit, entered: EnteredFile): readonly EntryProblem[] {
  const names = READINGS[wiringShape(circuit)];
  const wrong = (["idle", "loaded"] as const).flatMap((state) => {
    const readings = state === "idle" ? entered.idle : (entered.loaded?.readings ?? {});
    return Object.keys(readings)
      .filter((name) => !names.some((known) => known === name))
      .map((name) => ({
        path: state === "idle" ? `idle.${name}` : `loaded.readings.${name}`,
        what: `${circuit.circuit.name} has no reading ${name}`,
        mend: `its readings are ${names.join(", ")}`,
      }));
  });
  const across = entered.loaded?.across;
  const loads = names.filter((name) => !name.endsWith("G"));
  return across === undefined || loads.includes(across)
    ? wrong
    : [...wrong, { path: "loaded.across", what: `a test load cannot go across ${across} here`, mend: `put it across ${loads.join(" or ")}` }];
}

/** Judges readings entered for a designed circuit: its feeders, its stretches and its wiring are the job's. Throws RangeError on {@link entryProblems}. */
export function diagnoseOutlet(design: Pick<DesignedJob, "feeders" | "edition">, circuit: DesignedCircuit, entered: EnteredFile): Diagnosis {
  return diagnose({
    circuit: outletCircuit(design, circuit),
    idle: entered.idle,
    ...(entered.loaded === undefined ? {} : { loaded: entered.loaded }),
    ...(entered.meter === undefined ? {} : { meter: entered.meter }),
  });
}
