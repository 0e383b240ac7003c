import { cite } from "../basis/citation.js";
import type { Edition } from "../basis/edition.js";
import { article220, everyEdition } from "../basis/edition.js";
import type { Assumption, ServiceLoad } from "../designed.js";
import type { EquipmentKind } from "../equipment/equipment.js";
import type { Job } from "../job/schema.js";
import { panelsOf } from "../job/tree.js";
import { Decimal, decimal, print, ROUNDINGS } from "../quantity.js";
import { standardRatingAtLeast } from "../sizing/overcurrent.js";
import { type Worked, worked } from "../worked.js";
import { type ExistingDwelling, existingDwellingLoad, existingFrom, existingOf } from "./existing-dwelling.js";
import { houseLoad, serviceNeutral } from "./house-load.js";
import { type ManagedLoad, managedLoad } from "./managed-load.js";
import { measuredDemand } from "./measured-demand.js";
import type { NewLoad } from "./new-load.js";

const VOLTS = 240;

/** The service with and without the new work, in VA and amperes, and the margin left. What a method does not take in is added whole. */
export function serviceLoad(
  job: Job,
  added: readonly NewLoad[],
  edition: Edition,
): { readonly load: ServiceLoad; readonly assumptions: readonly Assumption[] } {
  const rating = leastRating(job);
  const { loads, managed } = heldLoads(job, added, edition);
  const { without, withNew, before, after, method, assumptions } = byMethod(job, loads, edition);
  const sum = decimal(withNew.value);
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
  const { dwelling, load_method } = job.service;
  const neutral = dwelling === undefined ? null : serviceNeutral({ id: "service.neutral", dwelling, added: loads, volts: VOLTS, edition });
  const least = load_method === "standard" || load_method === "optional" ? leastService(amperes, edition) : null;
  return {
    load: {
      without,
      with: withNew,
      amperes,
      amperesWithout,
      margin,
      marginVA,
      marginPercent,
      neutral: neutral?.total ?? null,
      leastRating: least,
      managed: managed?.total ?? null,
      method,
      steps: [
        ...before,
        ...(managed?.steps ?? []),
        ...after,
        withNew,
        amperesWithout,
        amperes,
        margin,
        marginVA,
        marginPercent,
        ...(least ? [least] : []),
        ...(neutral?.steps ?? []),
      ],
    },
    assumptions,
  };
}

const LEAST_DWELLING_AMPERES = 100;
const LEAST = { sections: everyEdition("230.79(C)"), standing: "memory" } as const;

/** Least standard rating of a one-family dwelling's service for its load; null beyond the standard ratings known here. 230.79(C), 240.6(A). */
export function leastService(amperes: Worked, edition: Edition): Worked | null {
  const rating = standardRatingAtLeast(Math.max(LEAST_DWELLING_AMPERES, Number(amperes.value)), edition);
  if (rating === null) return null;
  return worked({
    id: "service.least-rating",
    label: "Least service for this load",
    value: String(rating),
    unit: "A",
    expression: `max(${LEAST_DWELLING_AMPERES} A; ${print(amperes.value)} A)`,
    inputs: [amperes.id],
    rounding: "up to the next standard rating",
    citations: [cite(LEAST, edition)!],
    edition,
  });
}

/** The least of service, panel main and bus: the current the whole may draw. */
export function leastRating(job: Job): number {
  const { rating, panel } = job.service;
  return Math.min(rating, panel.main ?? rating, panel.bus);
}

/** The new loads as they count: themselves, or one under the setpoint of an energy management system where the edition knows such a count. */
function heldLoads(job: Job, added: readonly NewLoad[], edition: Edition): { readonly loads: readonly NewLoad[]; readonly managed: ManagedLoad | null } {
  const given = job.service.managed;
  if (given === undefined) return { loads: added, managed: null };
  const counted = managedLoad({
    id: "service.managed",
    setpointAmperes: given.setpoint,
    volts: VOLTS,
    managedVA: added.map((load) => Number(load.va)),
    manages: added.every((load) => load.kind === "ev") ? "ev-only" : "any",
    edition,
  });
  if (counted === null) return { loads: added, managed: null };
  const [connected, ...rest] = counted.steps;
  const managed = { ...counted, steps: [{ ...connected!, inputs: added.map((load) => load.id) }, ...rest] };
  const most = (values: readonly string[]) =>
    Decimal.min(
      managed.total.value,
      values.reduce((sum, va) => sum.plus(va), decimal(0)),
    ).toFixed();
  const va = managed.total.value;
  const ev = added.every((load) => load.kind === "ev");
  const one: NewLoad = {
    id: managed.total.id,
    name: "managed load",
    va,
    kind: ev ? "ev" : "whole",
    nameplates: [Number(va)],
    neutralVA: most(added.map((load) => load.neutralVA)),
    evVA: ev ? "0" : most(added.map((load) => (load.kind === "ev" ? load.va : load.evVA))),
  };
  return { loads: [one], managed };
}

interface ByMethod {
  readonly without: Worked;
  readonly withNew: Worked;
  /** Lines that lead to the load without the new work, and those from it to the load with it. */
  readonly before: readonly Worked[];
  readonly after: readonly Worked[];
  readonly method: string;
  readonly assumptions: readonly Assumption[];
}

function byMethod(job: Job, added: readonly NewLoad[], edition: Edition): ByMethod {
  const method = job.service.load_method;
  if (method === "standard" || method === "optional") return wholeHouse(job, method, added, edition);
  const { total: without, steps: before, ...rest } = method === "measured-demand" ? measured(job, edition) : computed(job, edition);
  const anew = method === "existing-dwelling" ? withClimateAdded(job, edition) : null;
  const base = anew?.total ?? without;
  const withNew = demandWith(
    added.reduce((total, load) => total.plus(load.va), decimal(base.value)),
    [base.value, ...added.map((load) => load.va)].map((va) => print(va)).join(" + "),
    [base.id, ...added.map((load) => load.id)],
    edition,
  );
  return { without, withNew, before, after: anew?.steps ?? [], ...rest };
}

function demandWith(value: Decimal, expression: string, inputs: readonly string[], edition: Edition): Worked {
  return worked({ id: "service.with", label: "Demand with the new work", value: value.toFixed(), unit: "VA", expression, inputs, edition });
}

function wholeHouse(job: Job, method: "standard" | "optional", added: readonly NewLoad[], edition: Edition): ByMethod {
  const { dwelling } = job.service;
  if (!dwelling) throw new Error("the reader lets no whole-house method through without the dwelling");
  const without = houseLoad({ id: "service.without", dwelling, added: [], method, edition });
  const all = houseLoad({ id: "service.whole", dwelling, added, method, edition });
  const whole = added.filter((load) => load.kind === "whole").map((load) => load.name);
  return {
    without: without.total,
    withNew: demandWith(decimal(all.total.value), `${print(all.total.value)} VA`, [all.total.id], edition),
    before: without.steps,
    after: all.steps,
    method: method === "standard" ? "Dwelling, standard method" : "Dwelling, optional method",
    assumptions:
      method === "optional" && whole.length > 0
        ? [
            {
              path: "service.load_method",
              says: `${whole.join(", ")} counted among the appliances on circuits of their own, so under the method's 40 %: ask the authority whether it takes a vehicle's outlet or a feeder so, or counts it whole`,
            },
          ]
        : [],
  };
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

function houseOf({ service: { existing, dwelling } }: Job): ExistingDwelling {
  const house = existing ? existingOf(existing) : dwelling ? existingFrom(dwelling) : null;
  if (!house) throw new Error("the reader lets no existing-dwelling job through without its loads");
  return house;
}

const CLIMATE: readonly EquipmentKind[] = ["heat", "air-conditioner"];

/** The house as it stands counted by 220.83(B), since this job adds heating or cooling; null where it adds none or is counted so already. */
function withClimateAdded(job: Job, edition: Edition) {
  const house = houseOf(job);
  const adds = panelsOf(job).some(({ panel }) => panel.circuits.some(({ serves }) => CLIMATE.includes(serves)));
  if (!adds || house.heatingOrCoolingAdded) return null;
  return existingDwellingLoad({ id: "service.existing-with-climate", dwelling: { ...house, heatingOrCoolingAdded: true }, edition });
}

function computed(job: Job, edition: Edition) {
  const { total, steps } = existingDwellingLoad({ id: "service.existing", dwelling: houseOf(job), edition });
  return { total, steps, method: "Existing dwelling", assumptions: [] as Assumption[] };
}
