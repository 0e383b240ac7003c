import { type Citation, cite, citeOther, type Rule } from "../basis/citation.js";
import { article220, type Edition, everyEdition } from "../basis/edition.js";
import { needsOf } from "../equipment/circuit-needs.js";
import type { EquipmentKind } from "../equipment/equipment.js";
import { cookingOf, equipmentOf, LEAST_DRYER_VA } from "../equipment/equipment-of.js";
import type { Circuit } from "../job/schema.js";
import { type Decimal, decimal, print } from "../quantity.js";
import { type Worked, worked } from "../worked.js";
import { dryerDemand } from "./dryer-demand.js";
import { evLoad } from "./ev-load.js";
import { rangeDemand } from "./range-demand.js";

const NAMEPLATE: Rule = { sections: article220("14(A)"), standing: "memory" };
const MOTOR: Rule = { sections: everyEdition("430.24"), standing: "published" };
const WELDER: Rule = { sections: everyEdition("630.11"), standing: "memory" };
const SOURCE = citeOther("Generator inlet", "a source, which adds no load", "practice");
const OUTLET = citeOther("Outlet rating", "volts × amperes as a fixed load", "practice");

interface Found {
  readonly value: Decimal;
  readonly expression: string;
  readonly citations: readonly Citation[];
  readonly inputs?: readonly string[];
  /** Lines that stand before the load's own. */
  readonly before?: readonly Worked[];
}
type LoadOf = (circuit: Circuit, amperes: number, edition: Edition) => Found;

const voltsTimesAmperes: LoadOf = (circuit, amperes) => {
  const { volts } = needsOf(circuit);
  return { value: decimal(volts).times(amperes), expression: `${volts} V × ${print(amperes)} A`, citations: [OUTLET] };
};

const evSupply: LoadOf = (circuit, amperes, edition) => {
  const { value, expression } = voltsTimesAmperes(circuit, amperes, edition);
  const { value: counted, citations, expression: says } = evLoad({ id: circuit.id, nameplateVA: value.toNumber(), edition });
  return { value: decimal(counted), expression: says.replace(`${print(value)} VA`, expression), citations };
};

const atNameplate: LoadOf = (circuit, _amperes, edition) => {
  const { volts } = needsOf(circuit);
  const load = decimal(circuit.nameplate?.load ?? 0);
  const fan = circuit.nameplate?.fan ?? 0;
  const expression = fan === 0 ? `${print(load)} VA` : `${print(load)} VA + ${volts} V × ${print(fan)} A`;
  return { value: load.plus(decimal(fan).times(volts)), expression, citations: [cite(NAMEPLATE, edition)!] };
};

/** By the minimum circuit ampacity, so with 125 % of the motor: safe whichever motor of the house is the largest. */
const byAmpacity =
  (rule: Rule): LoadOf =>
  (circuit, _amperes, edition) => {
    const { volts, ampacity } = equipmentOf(circuit, edition);
    return {
      value: decimal(volts).times(ampacity.value),
      expression: `${volts} V × ${print(ampacity.value)} A`,
      citations: [cite(rule, edition)!],
      inputs: [ampacity.id],
    };
  };

const demand = ({ total, steps }: { readonly total: Worked; readonly steps: readonly Worked[] }): Found => ({
  value: decimal(total.value),
  expression: `${print(total.value)} VA`,
  citations: total.citations,
  inputs: [total.id],
  before: steps,
});

const LOADS: Readonly<Record<EquipmentKind, LoadOf>> = {
  "rv-50": voltsTimesAmperes,
  "rv-30": voltsTimesAmperes,
  "receptacle-20": voltsTimesAmperes,
  "receptacle-15": voltsTimesAmperes,
  general: voltsTimesAmperes,
  spa: (circuit, amperes, edition) => ({ ...voltsTimesAmperes(circuit, amperes, edition), citations: [cite(NAMEPLATE, edition)!] }),
  "ev-supply": evSupply,
  range: (circuit, _amperes, edition) =>
    demand(rangeDemand({ id: `${circuit.id}.cooking`, appliances: cookingOf(circuit.nameplate ?? {}).map(({ load }) => load), edition })),
  dryer: (circuit, _amperes, edition) => demand(dryerDemand({ id: `${circuit.id}.dryer`, dryers: [circuit.nameplate?.load ?? LEAST_DRYER_VA], edition })),
  "water-heater": atNameplate,
  heat: atNameplate,
  welder: byAmpacity(WELDER),
  "air-conditioner": byAmpacity(MOTOR),
  motor: byAmpacity(MOTOR),
  "generator-inlet": () => ({ value: decimal(0), expression: "0 VA", citations: [SOURCE] }),
};

export interface OutletLoad {
  readonly load: Worked;
  /** Lines of a demand calculation that the load comes from. */
  readonly before: readonly Worked[];
}

/**
 * The load of a new circuit on the service in VA, by what it serves: as entered; else volts × amperes for an outlet, 220.57 for EV
 * supply, the demand of 220.54 and 220.55 for dryer and range, the nameplate or the minimum circuit ampacity for the rest.
 *
 * @param given.amperes what the circuit is worked at
 */
export function outletLoad(given: { readonly circuit: Circuit; readonly amperes: number; readonly edition: Edition }): OutletLoad {
  const { circuit, amperes, edition } = given;
  const id = `${circuit.id}.load`;
  const label = "Load on the service";
  if (circuit.load !== undefined)
    return {
      load: worked({
        id,
        label,
        value: decimal(circuit.load).toFixed(),
        unit: "VA",
        expression: `${print(circuit.load)} VA as entered`,
        citations: [citeOther("Job file", "load as entered", "practice")],
      }),
      before: [],
    };
  const { value, before = [], ...rest } = LOADS[circuit.serves](circuit, amperes, edition);
  return { load: worked({ id, label, value: value.toFixed(), unit: "VA", ...rest, edition }), before };
}
