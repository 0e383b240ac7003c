import { cite } from "../basis/citation.js";
import type { Edition } from "../basis/edition.js";
import { article220 } from "../basis/edition.js";
import type { Assumption, ServiceLoad } from "../designed.js";
import type { Job } from "../job/schema.js";
import { decimal, print, ROUNDINGS } from "../quantity.js";
import { type Worked, worked } from "../worked.js";
import { existingDwellingLoad } from "./existing-dwelling.js";
import { measuredDemand } from "./measured-demand.js";

const VOLTS = 240;

/** The service with and without the new circuits, in VA and amperes, and the margin left. New loads are added whole. */
export function serviceLoad(
  job: Job,
  added: readonly { readonly id: string; readonly va: string }[],
  edition: Edition,
): { readonly load: ServiceLoad; readonly assumptions: readonly Assumption[] } {
  const { service } = job;
  const rating = leastRating(job);
  const { total: without, steps: existing, method, assumptions } = service.load_method === "measured-demand" ? measured(job, edition) : computed(job, edition);
  const sum = added.reduce((total, load) => total.plus(load.va), decimal(without.value));
  const rounding = cite({ sections: article220("5(B)"), standing: "published" }, edition)!;
  const amps = (id: string, label: string, va: Worked | string, inputs: string[]) => {
    const value = typeof va === "string" ? va : va.value;
    return worked({
      id,
      label,
      value: ROUNDINGS.wholeAmpereHalfUp.apply(decimal(value).div(VOLTS)).toFixed(),
      unit: "A",
      expression: `${print(value)} VA / ${VOLTS} V = ${print(decimal(value).div(VOLTS), 2)} A`,
      rounding: ROUNDINGS.wholeAmpereHalfUp.says,
      citations: [rounding],
      inputs,
      edition,
    });
  };
  const withNew = worked({
    id: "service.with",
    label: "Demand with the new work",
    value: sum.toFixed(),
    unit: "VA",
    expression: [without.value, ...added.map((load) => load.va)].map((va) => print(va)).join(" + "),
    inputs: [without.id, ...added.map((load) => load.id)],
    edition,
  });
  const amperesWithout = amps("service.amperes-without", "Service current without the new work", without, [without.id]);
  const amperes = amps("service.amperes", "Service current with the new work", withNew, [withNew.id]);
  const margin = worked({
    id: "service.margin",
    label: "Margin on the least of service, main and bus",
    value: decimal(rating).minus(amperes.value).toFixed(),
    unit: "A",
    expression: `${print(rating)} A - ${print(amperes.value)} A`,
    inputs: [amperes.id],
    edition,
  });
  const capacity = decimal(rating).times(VOLTS);
  const marginVA = worked({
    id: "service.margin-va",
    label: "Margin",
    value: capacity.minus(sum).toFixed(),
    unit: "VA",
    expression: `${print(rating)} A × ${VOLTS} V - ${print(sum)} VA`,
    inputs: [withNew.id],
    edition,
  });
  const marginPercent = worked({
    id: "service.margin-percent",
    label: "Margin, per cent of the rating",
    value: capacity.minus(sum).div(capacity).times(100).toDecimalPlaces(4).toFixed(),
    unit: "%",
    expression: `${print(marginVA.value)} VA / ${print(capacity)} VA × 100`,
    inputs: [marginVA.id],
    edition,
  });
  return {
    load: {
      without,
      with: withNew,
      amperes,
      amperesWithout,
      margin,
      marginVA,
      marginPercent,
      method,
      steps: [...existing, withNew, amperesWithout, amperes, margin, marginVA, marginPercent],
    },
    assumptions,
  };
}

/** The least of service, panel main and bus: the current the whole may draw. */
export function leastRating(job: Job): number {
  const { rating, panel } = job.service;
  return Math.min(rating, panel.main ?? rating, panel.bus);
}

function measured(job: Job, edition: Edition) {
  const given = job.service.measured;
  if (!given) throw new Error("the reader lets no measured-demand job through without a measurement");
  const total = measuredDemand({ id: "service.measured", peakVA: given.peak, edition });
  const year = given.basis === "one-year";
  const assumptions: Assumption[] = [
    {
      path: "service.measured",
      says: `Peak from ${given.from}${year ? ", one year of record" : ", a 30-day record: it must include the largest heating or cooling season or have it added"}`,
    },
  ];
  return { total, steps: [total], method: "Measured demand", assumptions };
}

function computed(job: Job, edition: Edition) {
  const given = job.service.existing;
  if (!given) throw new Error("the reader lets no existing-dwelling job through without its loads");
  const { total, steps } = existingDwellingLoad({
    id: "service.existing",
    dwelling: {
      floorAreaFt2: given.floor_area,
      smallApplianceCircuits: given.small_appliance_circuits,
      laundryCircuits: given.laundry_circuits,
      appliancesVA: given.appliances.reduce((sum, a) => sum + a.load * a.count, 0),
      heatingOrCoolingVA: Math.max(given.heating?.load ?? 0, given.cooling?.load ?? 0),
      heatingOrCoolingAdded: given.heating_or_cooling_added,
    },
    edition,
  });
  return { total, steps, method: "Existing dwelling", assumptions: [] as Assumption[] };
}
