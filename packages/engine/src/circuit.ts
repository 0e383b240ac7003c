import type { Assumption, DesignedCircuit } from "./designed.js";
import type { Circuit } from "./job/schema.js";
import { OUTLETS } from "./outlet.js";
import { print } from "./quantity.js";
import { designRun, type RunGiven } from "./run.js";
import { outletLoad } from "./service/outlet-load.js";

/** Settles one branch circuit: what its outlet or equipment asks, then the run that supplies it. */
export function designCircuit(
  asked: Circuit,
  given: Omit<RunGiven, "run" | "needs" | "load">,
): { readonly designed: DesignedCircuit; readonly assumptions: readonly Assumption[] } {
  const outlet = OUTLETS[asked.serves];
  // A receptacle is worked at its own rating: anything up to it may be plugged in.
  const circuit: Circuit = { ...asked, current: outlet.receptacleAmperes ?? asked.current };
  const load = outletLoad(circuit, outlet.volts, given.basis.edition);
  const { designed, assumptions } = designRun({
    ...given,
    run: circuit,
    needs: {
      ...outlet,
      continuous: outlet.continuous ? circuit.current : 0,
      noncontinuous: outlet.continuous ? 0 : circuit.current,
    },
    load,
  });
  return {
    designed: { ...designed, kind: "circuit", circuit },
    assumptions: [...assumptions, ...loadAssumptions(asked, circuit, load.value)],
  };
}

function loadAssumptions(asked: Circuit, circuit: Circuit, loadVA: string): readonly Assumption[] {
  const path = `${circuit.id}.load`;
  const made: Assumption[] = [];
  if (circuit.current !== asked.current)
    made.push({
      path: `${circuit.id}.current`,
      says: `${circuit.name}: worked at the outlet's ${print(circuit.current)} A, not the ${print(asked.current)} A entered`,
    });
  if (circuit.load !== undefined) made.push({ path, says: `${circuit.name}: ${print(circuit.load)} VA on the service is the preparer's own figure` });
  else if (OUTLETS[circuit.serves].receptacleAmperes !== null)
    made.push({
      path,
      says: `${circuit.name}: the code gives such an outlet at a house no demand factor; ${print(loadVA)} VA (volts × amperes) is taken as a fixed load (common practice, no source)`,
    });
  return made;
}
