import type { Assumption, DesignedFeeder } from "./designed.js";
import type { Feeder } from "./job/schema.js";
import { decimal, print } from "./quantity.js";
import { designRun, type RunGiven } from "./run.js";
import { type FeederLoad, feederLoad } from "./service/feeder-legs.js";

/** Settles one feeder: the load behind it leg by leg, then the four-wire run that carries it. */
export function designFeeder(
  feeder: Feeder,
  given: Omit<RunGiven, "run" | "needs" | "load">,
): { readonly designed: DesignedFeeder; readonly load: FeederLoad; readonly assumptions: readonly Assumption[] } {
  const load = feederLoad(feeder, given.basis.edition);
  const { designed, assumptions } = designRun({
    ...given,
    run: feeder,
    needs: {
      says: `${feeder.panel.name}, 120/240 V, four wires`,
      volts: 240,
      hots: 2,
      neutral: true,
      gangs: 0,
      continuous: load.continuousAmperes,
      noncontinuous: decimal(load.amperes.value).minus(load.continuousAmperes).toFixed(),
      equipment: null,
    },
    load: load.total,
  });
  const [breaker, total, ...rest] = designed.steps;
  return {
    designed: {
      ...designed,
      kind: "feeder",
      feeder,
      legs: load.legs,
      neutralLoad: load.neutral,
      steps: [load.legs.L1, load.legs.L2, total!, load.amperes, load.neutral, breaker!, ...rest],
    },
    load,
    assumptions: [...assumptions, ...demandAssumptions(feeder, load)],
  };
}

function demandAssumptions(feeder: Feeder, load: FeederLoad): readonly Assumption[] {
  if (load.leftOut.length === 0) return [];
  return [
    {
      path: `${feeder.id}.demand`,
      says: `${feeder.name}: counted as one RV site by ${load.counted.join(", ")}; ${load.leftOut.join(", ")} not added (551.73 is written for parks: ask the authority whether it accepts it here). Together they may not draw more than the feeder's ${print(load.amperes.value)} A a leg`,
    },
  ];
}
