import type { DesignedRun } from "./designed.js";
import { decimal } from "./quantity.js";

/** Volts on the worst leg at a place along the way from the service, at full load, and the feet to it. */
export interface ProfilePoint {
  readonly name: string;
  readonly feet: string;
  readonly volts: string;
}

/**
 * The worst-leg voltage from the service to the end of a run; `way` is the feeders from the service down and then the run itself.
 * Where that run has no neutral its current is in both legs alike, and half of each drop between the hots falls on each.
 */
export function voltageProfile(given: { readonly from: string; readonly nominalVolts: number; readonly way: readonly DesignedRun[] }): readonly ProfilePoint[] {
  let feet = decimal(0);
  let volts = decimal(given.nominalVolts);
  const balanced = given.way.at(-1)?.neutral === false;
  return [
    { name: given.from, feet: "0", volts: volts.toFixed() },
    ...given.way.map((run) => {
      feet = run.segments.reduce((sum, s) => sum.plus(s.segment.length), feet);
      volts = volts.minus(balanced ? decimal(run.drop.balanced.value).div(2) : run.drop.worstLeg.value);
      return { name: run.run.name, feet: feet.toFixed(), volts: volts.toDecimalPlaces(3).toFixed() };
    }),
  ];
}
