import { citeOther } from "../basis/citation.js";
import type { DesignedCircuit, DesignedJob } from "../designed.js";
import { decimal, print } from "../quantity.js";
import { type Worked, worked } from "../worked.js";
import { APPLIANCES, type Appliance } from "./appliances.js";
import { type Hookup, mayRunTogether, usedTogether } from "./use-limits.js";

const HOOKUPS: Readonly<Partial<Record<DesignedCircuit["circuit"]["serves"], readonly Hookup[]>>> = {
  "rv-50": ["50", "50-to-30", "30", "15"],
  "rv-30": ["30", "50-to-30", "15"],
};

const LEAST_VOLTS = 60;

export interface OutletUse {
  readonly circuit: DesignedCircuit;
  /** Volts of a leg at the outlet with the circuit fully loaded. */
  readonly volts: Worked;
  readonly appliances: readonly Appliance[];
  readonly hookups: readonly {
    readonly hookup: Hookup;
    readonly says: string;
    readonly always: ReturnType<typeof usedTogether>;
    readonly sets: ReturnType<typeof mayRunTogether>;
  }[];
}

/** What may run together at an outlet for a vehicle, at the volts computed for it; null for an outlet that feeds no vehicle's panel, or one left with under 60 V. */
export function outletUse(design: Pick<DesignedJob, "edition">, circuit: DesignedCircuit, appliances: readonly Appliance[] = APPLIANCES): OutletUse | null {
  const hookups = HOOKUPS[circuit.circuit.serves];
  if (hookups === undefined) return null;
  const { edition } = design;
  // From the service down the drop is told in per cent, of this run alone in volts.
  const { fromService, worstLeg } = circuit.drop;
  const lost = fromService === null ? decimal(worstLeg.value) : decimal(fromService.value).div(100).times(circuit.legVolts);
  const left = decimal(circuit.legVolts).minus(lost);
  // Nothing can be run on half the volts; that drop is a failing finding of its own.
  if (left.lt(LEAST_VOLTS)) return null;
  const value = left.toDecimalPlaces(1);
  const volts = worked({
    id: `${circuit.circuit.id}.use.volts`,
    label: "Volts of a leg at the outlet, fully loaded",
    value: value.toFixed(),
    unit: "V",
    expression:
      fromService === null
        ? `${circuit.legVolts} V − ${print(worstLeg.value)} V`
        : `${circuit.legVolts} V − ${circuit.legVolts} V × ${print(fromService.value)} / 100`,
    inputs: [(fromService ?? worstLeg).id],
    rounding: "to a tenth of a volt",
    citations: [citeOther("Supply volts less the drop on the worst leg", "", "practice")],
    edition,
  });
  const given = { volts: value.toNumber(), appliances, edition };
  return {
    circuit,
    volts,
    appliances,
    hookups: hookups.map((hookup) => {
      const always = usedTogether({ ...given, hookup, appliances: appliances.filter((a) => a.always) });
      return { hookup, says: always.says, always, sets: mayRunTogether({ ...given, hookup }) };
    }),
  };
}
