import type { DesignedCircuit, DesignedFeeder, DesignedJob, DesignedRun } from "../designed.js";
import { type HouseCircuit, houseCircuit, runOhms } from "./house-circuit.js";
import type { WiringShape } from "./wiring.js";

/** The wiring shape that a run's outlet is read by. */
export function wiringShape({ volts, neutral }: Pick<DesignedRun, "volts" | "neutral">): WiringShape {
  if (volts === 120) return "one-hot";
  return neutral ? "four-wire" : "two-hot";
}

/** The feeders from the service panel down to the panel a run leaves, the first at the service. */
export function feedersTo(design: Pick<DesignedJob, "feeders">, run: Pick<DesignedRun, "panel">): readonly DesignedFeeder[] {
  const above = design.feeders.find(({ feeder }) => feeder.panel.id === run.panel);
  return above === undefined ? [] : [...feedersTo(design, above), above];
}

/** A stretch entered as 0 ft still joins what is at its ends: the network takes no conductor of no ohms. */
const LEAST_FEET = 0.1;

/**
 * A designed circuit as the network its readings are simulated on: the stretches of every feeder above it and its own, in ohms and
 * feet; supply, earth electrodes and coupling assumed. Throws RangeError for a conductor size that Chapter 9 Table 8 lacks.
 */
export function outletCircuit(design: Pick<DesignedJob, "feeders" | "edition">, circuit: DesignedCircuit): HouseCircuit {
  const stretches = [...feedersTo(design, circuit), circuit].flatMap((run) =>
    run.segments.map(({ segment, conductor, grounding, neutral }) => ({
      size: conductor.size,
      ...(neutral === null ? {} : { neutral: neutral.size }),
      grounding: grounding.size,
      material: segment.conductors.material,
      feet: Math.max(segment.length, LEAST_FEET),
      // Equal sets in parallel halve (third, …) the ohms of every conductor, the equipment ground's too.
      sets: segment.sets ?? 1,
    })),
  );
  return houseCircuit({
    outlet: wiringShape(circuit),
    run: runOhms(
      stretches.map((stretch) => ({ ...stretch, feet: stretch.feet / stretch.sets })),
      design.edition,
    ),
    feet: stretches.reduce((sum, { feet }) => sum + feet, 0),
  });
}
