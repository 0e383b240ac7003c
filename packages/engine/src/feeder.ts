import type { Assumption, DesignedFeeder, DesignedRun } from "./designed.js";
import type { Feeder } from "./job/schema.js";
import { decimal, print } from "./quantity.js";
import { designRun, type RunGiven } from "./run.js";
import { type FeederLoad, feederLoad } from "./service/feeder-legs.js";
import { printSize } from "./tables/size.js";

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
    assumptions: [...assumptions, ...demandAssumptions(feeder, load), ...sizesNotRead(feeder, designed)],
  };
}

/** A feeder that stands already, with sizes that nobody read off: one line that says what was taken. */
function sizesNotRead(feeder: Feeder, { rating, segments }: DesignedRun): readonly Assumption[] {
  if (!feeder.existing) return [];
  const taken = segments.flatMap(({ segment, conductor, grounding, tradeSize }) => [
    ...(conductor.chosen === "computed" ? [`${printSize(conductor.size)} conductors`] : []),
    ...(grounding.chosen === "computed" ? [`${printSize(grounding.size)} ground`] : []),
    ...(tradeSize !== null && segment.trade_size === undefined ? [`${tradeSize} in raceway`] : []),
  ]);
  const all = [...new Set([...(feeder.breaker.rating === undefined ? [`${rating} A breaker`] : []), ...taken])];
  if (all.length === 0) return [];
  return [
    {
      path: `${feeder.id}.existing`,
      says: `${feeder.name}: stands already, and these sizes were not read off it but taken as the least that serve: ${all.join(", ")}. Read them before relying on anything this feeder carries`,
    },
  ];
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
