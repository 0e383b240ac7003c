import type { DesignedRun } from "./designed.js";
import { decimal } from "./quantity.js";

/** Volts on the worst leg at a place along the way from the service, at full load, and the feet to it. */
export interface ProfilePoint {
  readonly name: string;
  readonly feet: string;
  readonly volts: string;
}

/** The worst-leg voltage from the service to the end of a run; `way` is the feeders from the service down and then the run itself. */
export function voltageProfile(given: { readonly from: string; readonly nominalVolts: number; readonly way: readonly DesignedRun[] }): readonly ProfilePoint[] {
  let feet = decimal(0);
  let volts = decimal(given.nominalVolts);
  return [
    { name: given.from, feet: "0", volts: volts.toFixed() },
    ...given.way.map((run) => {
      feet = run.segments.reduce((sum, s) => sum.plus(s.segment.length), feet);
      // Without a neutral the drop is between the hots: half of it falls on each leg.
      volts = volts.minus(run.neutral ? run.drop.worstLeg.value : decimal(run.drop.worstLeg.value).div(2));
      return { name: run.run.name, feet: feet.toFixed(), volts: volts.toDecimalPlaces(3).toFixed() };
    }),
  ];
}
